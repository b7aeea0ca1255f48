// Builds the bundles in dist/: the extension and its server, each for Node and for a browser, and the preview's page.
// Usage: node extension/build.mjs [OUT_FOLDER]   (default: dist/ beside this file)
import { rmSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { forBrowser, forNode, inParts, makeBundles, REQUIRE } from "../.scripts/bundling.mjs";

const here = dirname(fileURLToPath(import.meta.url));
const out = resolve(process.argv[2] ?? join(here, "dist"));

// What the editor loads by `require`.
const client = { format: "cjs", external: ["vscode"] };

rmSync(out, { recursive: true, force: true });
await makeBundles(here, out, [
  { ...forNode, ...client, entryPoints: { extension: "client/extension-node.ts" } },
  { ...forBrowser, ...client, entryPoints: { "extension-web": "client/extension-web.ts" } },
  {
    ...forNode,
    ...inParts,
    entryPoints: { server: "../language/server/node-main.ts" },
    // The extension is no package of ES modules, so their ending says it.
    outExtension: { ".js": ".mjs" },
    banner: { js: REQUIRE },
  },
  // In one piece: it is handed to its worker as a blob, which has no neighbours to load.
  { ...forBrowser, format: "iife", entryPoints: { "server-worker": "../language/server/browser.ts" } },
  { ...forBrowser, format: "iife", entryPoints: { "preview-page": "webview/preview.ts" } },
]);

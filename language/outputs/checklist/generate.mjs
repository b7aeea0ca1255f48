// Bundles the script of the HTML checklist, and gives it with the hash that its policy names.
// Usage: node generate.mjs [OUT_FOLDER]   (default: generated/ beside this file)
import { createHash } from "node:crypto";
import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const here = dirname(fileURLToPath(import.meta.url));
const out = resolve(process.argv[2] ?? join(here, "generated"));

const { outputFiles } = await build({
  absWorkingDir: here,
  entryPoints: ["page/main.ts"],
  bundle: true,
  format: "iife",
  // Tablets of a shop are not new: Chrome and Edge 94, Firefox 93, Safari 16.4.
  target: ["chrome94", "firefox93", "safari16.4"],
  minify: true,
  charset: "ascii",
  legalComments: "none",
  write: false,
});
const script = outputFiles[0].text.trim();
if (/<\/script|<!--/i.test(script)) throw new Error("The script would end its own element.");
const hash = createHash("sha256").update(script, "utf8").digest("base64");
mkdirSync(out, { recursive: true });
writeFileSync(
  join(out, "page.ts"),
  `// Made from page/ by npm run generate; not to be edited.\nexport const PAGE_SCRIPT =\n  ${JSON.stringify(script)};\nexport const PAGE_HASH = "sha256-${hash}";\n`,
);

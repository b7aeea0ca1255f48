// Draws icon.png from icon.svg with Chromium, for the marketplace and the editor, which take no SVG.
// Usage: node extension/icons/render.mjs
import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

const here = dirname(fileURLToPath(import.meta.url));
const svg = readFileSync(join(here, "icon.svg"), "utf8");
const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox"] });
const page = await browser.newPage({ viewport: { width: 256, height: 256 } });
await page.setContent(`<style>body { margin: 0 } svg { display: block; width: 256px; height: 256px }</style>${svg}`);
await page.screenshot({ path: join(here, "icon.png"), omitBackground: true });
await browser.close();

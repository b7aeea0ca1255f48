// Libraries that have one build for Node and one for a browser: the browser's is taken everywhere, since the two pack bytes in different
// ways, and an output has to be the same whoever makes it.
import { createRequire } from "node:module";
import { dirname, join } from "node:path";

const { resolve } = createRequire(import.meta.url);
const beside = (name, file) => join(dirname(resolve(name)), file);

/** Name of a package to the file of its browser build. */
export const browserBuilds = {
  pdfkit: beside("pdfkit", "pdfkit.browser.mjs"),
  fontkit: beside("fontkit", "browser-module.mjs"),
  "png-js": beside("png-js", "png-js.browser.js"),
};

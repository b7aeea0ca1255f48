// Puts the typefaces that outputs embed beside a bundle.
import { copyFile, mkdir } from "node:fs/promises";
import { createRequire } from "node:module";
import { join } from "node:path";

/** Into the folder `assets` of `out`. */
export async function copyFonts(out) {
  const { resolve } = createRequire(import.meta.url);
  const assets = join(out, "assets");
  await mkdir(assets, { recursive: true });
  for (const name of ["DejaVuSans.ttf", "DejaVuSans-Bold.ttf"])
    await copyFile(resolve(`dejavu-fonts-ttf/ttf/${name}`), join(assets, name));
}

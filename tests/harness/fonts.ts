// The typefaces that outputs embed, as they come from their package.
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import type { Fonts } from "#outputs/index.ts";

const { resolve } = createRequire(import.meta.url);

export async function fonts(): Promise<Fonts> {
  return {
    regular: await readFile(assetFile("DejaVuSans.ttf")),
    bold: await readFile(assetFile("DejaVuSans-Bold.ttf")),
  };
}

/** Where a file lies that the command has in its folder `assets`. */
export function assetFile(name: string): string {
  return resolve(`dejavu-fonts-ttf/ttf/${name}`);
}

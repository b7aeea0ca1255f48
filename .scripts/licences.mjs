// The licences of all that a bundle holds and did not write itself: most ask that they go along with their code.
import { existsSync } from "node:fs";
import { readdir, readFile, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { dirname, join, resolve } from "node:path";

/** What stands beside the bundles and is no module. */
const BESIDE = ["dejavu-fonts-ttf"];

/**
 * Writes `licences.txt`: a chapter for each package, in the order of their names.
 * @param modules the paths of all files that are in the bundles
 */
export async function writeLicences(out, modules) {
  const { resolve: find } = createRequire(import.meta.url);
  const folders = new Set(BESIDE.map((name) => dirname(find(`${name}/package.json`))));
  for (const path of modules) {
    const folder = packageOf(resolve(path));
    if (folder !== null) folders.add(folder);
  }
  const chapters = await Promise.all([...folders].map(chapterOf));
  await writeFile(join(out, "licences.txt"), `${INTRODUCTION}\n${chapters.sort().join("\n")}`);
}

const INTRODUCTION = "Sprag holds code and typefaces of others. Their licences:\n";

/** The folder of the package that a file is a part of; null where it is our own. */
function packageOf(path) {
  const [, folder] = /^(.*[/\\]node_modules[/\\](?:@[^/\\]+[/\\])?[^/\\]+)[/\\]/.exec(path) ?? [];
  return folder !== undefined && existsSync(join(folder, "package.json")) ? folder : null;
}

async function chapterOf(folder) {
  const { author, license, name, version } = JSON.parse(await readFile(join(folder, "package.json"), "utf8"));
  const files = (await readdir(folder)).filter((file) => /^(?:licen[cs]e|copying|notice)/i.test(file)).sort();
  const texts = await Promise.all(files.map((file) => readFile(join(folder, file), "utf8")));
  // A few packages name their licence and do not bring it.
  const by = typeof author === "string" ? author : (author?.name ?? "");
  const said = texts.length > 0 ? texts : [[`Licence: ${license ?? "not said"}`, by].filter(Boolean).join(", by ")];
  return [`${name} ${version}`, "", ...said.map((text) => text.trim()), ""].join("\n");
}

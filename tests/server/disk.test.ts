// Files as the server reads them from the disk itself: what is text for the command is text here, and nothing else.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { expect, test } from "vitest";
import { readText } from "#cli/read-text.ts";
import { folderWith } from "#harness/command.ts";
import { diskFiles } from "#server/disk.ts";

test.each([
  ["plain", Buffer.from('part A "a"\n'), 'part A "a"\n'],
  ["with a byte order mark", Buffer.from("\uFEFFpart Gehäuse"), "part Gehäuse"],
  ["empty", Buffer.from(""), ""],
  // 0xE4 is `ä` in Latin-1, and no UTF-8.
  ["in Latin-1", Buffer.from('part Geh\u00E4use "x"\n', "latin1"), null],
  ["in UTF-16", Buffer.from("\uFEFFpart A", "utf16le"), null],
  ["with a zero byte", Buffer.from('part A "a\0"\n'), null],
  ["longer than any procedure", Buffer.alloc(24_000_001, " "), null],
])("a text %s", async (_, content, expected) => {
  const path = join(folderWith({ "other.sprag": "" }).path, "a.sprag");
  writeFileSync(path, content);
  const [read] = await diskFiles.read([pathToFileURL(path).href]);
  const byCommand = readText(path);
  expect(read === (byCommand.ok ? byCommand.text : null)).toBe(true);
  expect(read?.slice(0, 99) ?? null).toBe(expected);
});

test("what is not there, is a folder, or has no address on a disk", async () => {
  const { path } = folderWith({ "sub/a.sprag": "" });
  const uris = [join(path, "none.sprag"), join(path, "sub")].map((one) => pathToFileURL(one).href);
  expect(await diskFiles.read([...uris, "untitled:one"])).toEqual([null, null, null]);
  expect(await diskFiles.present([...uris, "untitled:one"])).toEqual([false, false, false]);
});

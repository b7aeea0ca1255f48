// Against cmark-gfm (Debian package `cmark-gfm`), the reference reader of GitHub-flavoured Markdown: text that is put in
// with `inline` is read back as the same text, and a table as the cells it was made of.
import { spawnSync } from "node:child_process";
import fc from "fast-check";
import { expect, test } from "vitest";
import { inline, linkTo, quoted, table } from "#outputs/checklist/md-markup.ts";
import { make } from "../outputs/make.ts";
import { COVER } from "../outputs/procedures.ts";

const PROGRAM = "cmark-gfm";
const EXTENSIONS = ["table", "tasklist", "strikethrough", "autolink"].flatMap((name) => ["-e", name]);
const present = spawnSync(PROGRAM, ["--version"]).error === undefined;

/** Characters and runs that mean something somewhere in Markdown. */
const piece = fc.constantFrom(
  ...[
    "*",
    "_",
    "`",
    "~~",
    "[a](b)",
    "![",
    "]",
    "(",
    "<b>",
    "</td>",
    "&amp;",
    "&#124;",
    "|",
    "\\",
    "\\|",
    "#",
    "- ",
    "+ ",
    "1. ",
    "2) ",
  ],
  ...[
    "> ",
    "==",
    "---",
    "http://a.b",
    "www.a.b",
    "a@b.c",
    "$x$",
    "[^1]",
    ":",
    "\n",
    "\t",
    "    ",
    "é",
    "word",
    "3.5",
    "-5",
    "[ ] ",
    "!",
    '"',
    "'",
  ],
);
const hostile = fc.array(piece, { minLength: 1, maxLength: 8 }).map((pieces) => pieces.join(""));

test("text in paragraphs, list items, quotes and headings is read as that text", () => {
  if (!present) return leftOut("escaping of text");
  const texts = fc.sample(hostile, { numRuns: 1500, seed: 7 }).filter((text) => plain(text) !== "");
  const frames: readonly ((text: string) => string)[] = [
    (text) => text,
    (text) => `- [ ] ${text}`,
    (text) => quoted([text]),
    (text) => `## ${text}`,
  ];
  const parts = texts.map((text, at) => (frames[at % frames.length] as (text: string) => string)(inline(text)));
  const html = read(parts.join("\n\n***\n\n"));
  const found = html.split("<hr />").map((part) => part.trim());
  expect(found).toHaveLength(texts.length);
  texts.forEach((text, at) => {
    expect(
      elements(found[at] ?? "").filter((name) => !["p", "ul", "li", "input", "blockquote", "h2"].includes(name)),
      text,
    ).toEqual([]);
    expect(plain(decoded(found[at] ?? "")), text).toBe(plain(text));
  });
  console.log(`cmark-gfm read ${texts.length} hostile texts`);
});

test("a table keeps its cells", () => {
  if (!present) return leftOut("tables");
  const rows = fc.sample(fc.array(hostile, { minLength: 3, maxLength: 3 }), { numRuns: 300, seed: 11 });
  const html = read(table(["a", "b", "c"], rows));
  const cells = [...html.matchAll(/<td>([\s\S]*?)<\/td>/g)].map((found) => found[1] ?? "");
  expect(cells.flatMap(elements)).toEqual([]);
  expect(cells.map((cell) => plain(decoded(cell)))).toEqual(rows.flat().map(plain));
  console.log(`cmark-gfm read ${cells.length} cells`);
});

test("a whole checklist has the boxes, tables and links that it was given", () => {
  if (!present) return leftOut("the whole checklist");
  const { md } = make(COVER);
  const html = read(md);
  // This version of the reader leaves a box in a quote as it is written.
  const boxes = html.match(/<input type="checkbox"|<li>\[ \] /g);
  expect(boxes).toHaveLength(md.match(/^(?:> ?)*- \[ \] /gm)?.length ?? 0);
  expect(html.match(/<table>/g)).toHaveLength(md.match(/^(?:> ?)*\|(?: --- \|)+$/gm)?.length ?? 0);
  expect(html).toContain('<a href="#step-1-5">');
  expect(linkTo("step-1", "a](b)")).toBe("[a\\](b)](#step-1)");
});

function read(markdown: string): string {
  return spawnSync(PROGRAM, EXTENSIONS, { input: markdown, encoding: "utf8" }).stdout;
}

function leftOut(what: string): void {
  console.log(`cmark-gfm is not installed (Debian package cmark-gfm): ${what} left out`);
  expect(process.env.CI ?? "").not.toBe("true");
}

function elements(html: string): readonly string[] {
  return [...html.matchAll(/<([a-z][a-z0-9]*)/g)].map((found) => found[1] ?? "");
}

function decoded(html: string): string {
  const named: Readonly<Record<string, string>> = { "&lt;": "<", "&gt;": ">", "&quot;": '"', "&amp;": "&" };
  return html.replace(/<[^>]*>/g, "").replace(/&(?:lt|gt|quot|amp);/g, (entity) => named[entity] ?? entity);
}

/** Blanks do not count in Markdown. */
function plain(text: string): string {
  return text.replace(/\s+/g, " ").trim();
}

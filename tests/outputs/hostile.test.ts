// Hostile text in every place that holds own words comes out as text: in HTML as the same characters, in Markdown as
// no markup of its own.
import { describe, expect, test } from "vitest";
import { PAGE_HASH, PAGE_SCRIPT } from "#outputs/checklist/generated/page.ts";
import type { Plan } from "#outputs/record/plan.ts";
import { elementsIn, readHtml, textOf } from "./html-reader.ts";
import { make } from "./make.ts";

const BAD = `</style></title><script>alert(1)</script><img src=x onerror=alert(2)>&lt;b&gt; ' | \`code\` **bold** [a](javascript:x) \\\\ {n} <!-- -->`;

/** The same, and marked so that each place can be found. */
function bad(place: string): string {
  return `${place}${BAD}`;
}

const PLACES = [
  ...[
    "material",
    "source",
    "revision",
    "role",
    "ring",
    "seen",
    "part",
    "tool",
    "consumable",
    "energy",
    "hazard",
    "option",
    "choice",
    "fact",
  ],
  ...[
    "title",
    "number",
    "docrev",
    "model",
    "sourcesection",
    "task",
    "danger",
    "avoid",
    "wear",
    "note",
    "words",
    "label",
    "check",
  ],
  ...["measure", "do", "inspect", "mark", "why", "figure", "caption", "stop", "reason", "by"],
];

const q = (place: string): string => JSON.stringify(bad(place)).replaceAll("\\\\\\\\", "\\\\");

const TEXT = `
material Steel ${q("material")}
source Manual ${q("source")} revision ${q("revision")}
role Fitter ${q("role")}
ring Circle ${q("ring")} { count 4 numbered clockwise seen from ${q("seen")} position 1 at 12 o'clock }
part Base ${q("part")} { material Steel }
part Pin[1..4] "pin" { seats in Circle by number }
tool Gauge ${q("tool")} { measures 0 .. 10 mm }
consumable Oil ${q("consumable")}
energy Supply ${q("energy")}
hazard Dust ${q("hazard")}
option Extent ${q("option")} { Full ${q("choice")} Part "part" }
fact Signed ${q("fact")}
procedure Work ${q("title")} {
  document ${q("number")} revision ${q("docrev")} dated 2026-05-04
  applies to ${q("model")}
  based on Manual revision ${q("revision")}
  begin with Signed
  task ${q("task")} {
    danger Dust ${q("danger")} avoid ${q("avoid")} wear ${q("wear")}
    note ${q("note")}
    step One ${q("words")} {
      install Base with Gauge
      install Pin[1] in Circle[1]
      lubricate Base with Oil
      isolate Supply
      align Base with Pin[1] mark ${q("mark")}
      inspect Base ${q("inspect")}
      do ${q("do")}
      measure ${q("measure")} with Gauge expect 1 .. 2 mm
      check ${q("check")} with Gauge record if it fails { stop ${q("stop")} }
      record ${q("label")} 1 .. 2 mm with Gauge
      sign Fitter
      hold for Fitter
      by Fitter
      why ${q("why")}
      figure "f.svg" ${q("caption")}
      per Manual ${q("sourcesection")}
      allow order.unfinished because ${q("reason")} by ${q("by")}
    }
    when Extent is Full { step ${q("words")} }
    repeat n from 1 to 2 { step ${q("words")} }
  }
}
`;

/** Places that a checklist does not print: they concern training or the desk. */
const NOT_PRINTED = new Set(["material", "seen", "why", "figure"]);
const printed = PLACES.filter((place) => !NOT_PRINTED.has(place));

const made = make(TEXT, { draft: true });
const root = readHtml(made.html);

describe("HTML", () => {
  test("every hostile text comes back as the text it was", () => {
    // A fact begins a sentence of its own.
    const text = textOf(root).replaceAll("Fact", "fact");
    const shown = BAD.replaceAll("\\\\", "\\");
    const missing = printed.filter((place) => !text.includes(place + shown.slice(0, 60)));
    expect(missing).toEqual([]);
    // The whole of it, to the last character, where nothing is filled in.
    expect(text).toContain(`title${shown}`);
    expect(text).toContain(`stop${shown}`);
  });

  test("no element or attribute comes from a text", () => {
    const names = new Set([...elementsIn(root)].map((element) => element.name));
    expect([...names].filter((name) => !KNOWN.has(name))).toEqual([]);
    const attributes = [...elementsIn(root)].flatMap((element) => [...element.attributes.keys()]);
    expect(attributes.filter((name) => name.startsWith("on") || name === "src" || name === "style")).toEqual([]);
    const links = [...elementsIn(root)].flatMap((element) => element.attributes.get("href") ?? []);
    expect(links.filter((link) => !link.startsWith("#step-"))).toEqual([]);
  });

  test("the style sheet ends where it should, whatever the document is called", () => {
    const style = made.html.slice(made.html.indexOf("<style>"), made.html.indexOf("</style>"));
    expect(style).not.toMatch(/<(?!style>)/);
  });

  test("nothing is loaded and nothing can run in a draft", () => {
    expect(made.html).not.toMatch(/<(?:script|link|iframe|object|img)\b|@import|url\(/);
    const policy = [...elementsIn(root)].find((one) => one.attributes.get("http-equiv") === "Content-Security-Policy");
    expect(policy?.attributes.get("content")).toContain("default-src 'none'");
  });
});

describe("HTML that is filled in", () => {
  const { html } = make(TEXT, { findings: [] });
  const elements = [...elementsIn(readHtml(html))];

  test("two scripts: its data, and the page's own, whose hash is in the policy", () => {
    const scripts = elements.filter(({ name }) => name === "script");
    expect(scripts.map(({ attributes }) => attributes.get("type"))).toEqual(["application/json", undefined]);
    expect(scripts[1]?.children).toEqual([PAGE_SCRIPT]);
    const policy = elements.find((one) => one.attributes.get("http-equiv") === "Content-Security-Policy");
    expect(policy?.attributes.get("content")).toContain(`default-src 'none'; script-src '${PAGE_HASH}';`);
    // Once at the head and once at the end of each: no text opens or closes one.
    expect(html.match(/<script/g)).toHaveLength(2);
    expect(html.match(/<\/script/gi)).toHaveLength(2);
  });

  test("the data are the texts as they were", () => {
    const data = String(elements.find((one) => one.attributes.get("id") === "data")?.children[0]);
    expect(data).not.toMatch(/[<>&\u2028\u2029]/);
    const { plan } = JSON.parse(data) as { readonly plan: Plan };
    const shown = BAD.replaceAll("\\\\", "\\");
    expect([plan.title, plan.roles[0]?.title]).toEqual([`title${shown}`, `role${shown}`]);
  });

  test("no element or attribute comes from a text", () => {
    const known = new Set([...KNOWN, "script", "button", "g"]);
    expect([...new Set(elements.map(({ name }) => name))].filter((name) => !known.has(name))).toEqual([]);
    const attributes = elements.flatMap((one) => [...one.attributes.keys()]);
    expect(attributes.filter((name) => name.startsWith("on") || name === "src" || name === "style")).toEqual([]);
  });
});

const KNOWN = new Set([
  ...[
    "html",
    "head",
    "meta",
    "title",
    "style",
    "body",
    "header",
    "main",
    "footer",
    "section",
    "div",
    "p",
    "span",
    "strong",
    "b",
    "i",
  ],
  ...["h1", "h2", "h3", "h4", "h5", "h6", "ul", "li", "dl", "dt", "dd", "table", "thead", "tbody", "tr", "th", "td"],
  ...["label", "input", "code", "a", "svg", "path"],
]);

describe("Markdown", () => {
  test("no angle bracket, pipe or backquote of a text is left bare", () => {
    const text = made.md.replaceAll(/<a id="step-[\w-]+"><\/a>/g, "");
    expect(text).not.toMatch(/<|(?<!\\)`/);
    // Outside tables' own pipes, each pipe of a text is escaped.
    const lines = text.split("\n").filter((line) => !/^(?:> ?)*\|/.test(line));
    expect(lines.filter((line) => /(?<!\\)\|/.test(line))).toEqual([]);
  });

  test("a table row has as many cells as its head", () => {
    const tables = made.md.split("\n\n").filter((part) => part.startsWith("|"));
    expect(tables.length).toBeGreaterThan(4);
    for (const table of tables) {
      const counts = table.split("\n").map((row) => row.replaceAll("\\|", "").split("|").length);
      expect(new Set(counts).size).toBe(1);
    }
  });
});

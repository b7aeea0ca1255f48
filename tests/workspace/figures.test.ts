// Pictures of a procedure: what is wanted, what of it gets into outputs and what stays a caption; no byte is read by the façade.
import { expect, test } from "vitest";
import { folderWith } from "#harness/command.ts";
import { exportText } from "#harness/export.ts";
import { figuresWanted, openWorkspace, type Workspace, withFigures } from "#workspace/index.ts";
import { elementsIn, readHtml } from "../outputs/html-reader.ts";

const TEXT = `part Base "base"
procedure Work "Work" {
  step "Look." { figure "pictures/a.png" "the <b>base</b>" figure "gone.png" "not there" figure "b.svg" figure "c.txt" }
}
`;
const PNG = Buffer.from("89504e470d0a1a0a0000", "hex");
const SVG = '<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>';

function opened(): Workspace {
  return openWorkspace({
    texts: new Map([["shop/work.sprag", TEXT]]),
    present: new Set(["shop/pictures/a.png", "shop/b.svg", "shop/c.txt"]),
    absent: new Set(["shop/gone.png"]),
    today: "2026-05-04",
  });
}

function page(workspace: Workspace): string {
  const request = {
    path: "shop/work.sprag",
    as: "checklist",
    format: "html",
    units: "both",
    repeats: "compact",
  } as const;
  return exportText(workspace, { ...request, draft: true });
}

function sources(html: string): readonly (readonly [string, string])[] {
  return [...elementsIn(readHtml(html))].flatMap((one) =>
    one.name === "img" ? [[one.attributes.get("src") ?? "", one.attributes.get("alt") ?? ""] as const] : [],
  );
}

test("a check wants to know only whether they are there; an output wants the bytes of those that are", () => {
  const workspace = opened();
  expect(workspace.wanted).toEqual([]);
  expect(figuresWanted(workspace, "shop/work.sprag")).toEqual(
    ["shop/b.svg", "shop/c.txt", "shop/pictures/a.png"].map((path) => ({ path, need: "bytes" })),
  );
  const given = withFigures(workspace, new Map([["shop/b.svg", null]]));
  expect(figuresWanted(given, "shop/work.sprag").map(({ path }) => path)).toEqual([
    "shop/c.txt",
    "shop/pictures/a.png",
  ]);
});

test("a picture stands in the page as data, an SVG never as markup; what is no picture stays a caption", () => {
  const bytes = new Map([
    ["shop/pictures/a.png", PNG],
    ["shop/b.svg", Buffer.from(SVG)],
    ["shop/c.txt", Buffer.from("<html>")],
  ]);
  const html = page(withFigures(opened(), bytes));
  expect(sources(html)).toEqual([
    [`data:image/png;base64,${PNG.toString("base64")}`, "the <b>base</b> (pictures/a.png)"],
    [`data:image/svg+xml;base64,${Buffer.from(SVG).toString("base64")}`, "b.svg"],
  ]);
  expect(html).not.toContain("alert(1)");
  for (const caption of ["Figure: not there (gone.png)", "Figure: c.txt"]) expect(html).toContain(caption);
});

test("a trainee's sheet shows it too, with its values left out round it", () => {
  const workspace = withFigures(opened(), new Map([["shop/pictures/a.png", PNG]]));
  const request = {
    path: "shop/work.sprag",
    as: "trainee",
    format: "html",
    units: "both",
    repeats: "compact",
  } as const;
  expect(sources(exportText(workspace, { ...request, draft: true }))).toHaveLength(1);
});

test("a picture that is too large, or whose bytes were not to be had, stays a caption", () => {
  const large = new Uint8Array(4_000_001);
  large.set(PNG);
  for (const bytes of [large, null]) {
    const html = page(withFigures(opened(), new Map([["shop/pictures/a.png", bytes]])));
    expect(sources(html)).toEqual([]);
    expect(html).toContain("Figure: the &lt;b&gt;base&lt;/b&gt; (pictures/a.png)");
  }
  expect(page(opened())).not.toContain("<img");
});

test("the command reads them from the disk", () => {
  const folder = folderWith({ "work.sprag": TEXT, "pictures/a.png": PNG, "b.svg": SVG });
  const { out } = folder.sprag("export", "work.sprag", "--draft");
  expect(sources(out).map(([source]) => source.slice(0, 20))).toEqual(["data:image/png;base6", "data:image/svg+xml;b"]);
});

test("the content hash covers the bytes of every figure, and is not told before all are at hand", () => {
  const hash = (figures: Readonly<Record<string, string | null>>): string | undefined => {
    const bytes = Object.entries(figures).map(([name, text]) => [
      `shop/${name}`,
      text === null ? null : Buffer.from(text),
    ]);
    return /[0-9a-f]{64}/.exec(page(withFigures(opened(), new Map(bytes as [string, Buffer | null][]))))?.[0];
  };
  const all = { "pictures/a.png": "png", "b.svg": "<svg/>", "c.txt": "text" };
  const others = [
    { ...all, "pictures/a.png": "pnh" },
    { ...all, "b.svg": "<svg />" },
    { ...all, "b.svg": null },
    { ...all, "pictures/a.png": all["b.svg"], "b.svg": all["pictures/a.png"] },
  ];
  expect(hash(all)).toBe(hash({ "c.txt": "text", "b.svg": "<svg/>", "pictures/a.png": "png" }));
  expect(new Set([all, ...others].map(hash)).size).toBe(1 + others.length);
  expect(hash(all)).toMatch(/^[0-9a-f]{64}$/);
  expect(hash({ "pictures/a.png": "png", "b.svg": "<svg/>" })).toBeUndefined();
});

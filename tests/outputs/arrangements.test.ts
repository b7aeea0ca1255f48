// Who goes where on the checklist: by position with serial and mass, what is left beside what may be, and the serial at the step.
import { describe, expect, test } from "vitest";
import { exportText } from "#harness/export.ts";
import { openWorkspace } from "#workspace/workspace.ts";
import { type Made, makeFrom, stepsIn, type Wishes } from "./make.ts";

const TEXT = `ring Seat "segment seat" { count 4  numbered clockwise seen from "drive end"  position 1 at 6 o'clock }
part Segment[1..4] "tooth segment" { seats in Seat by number }
arrangement Order of Segment in Seat { radius 500 mm  unbalance at most 600 g·mm  from "t.csv" }
procedure Fit "Fit the segments" {
  finish with Segment[all] are installed
  repeat n from 4 down to 1 { step install Segment[n] in Seat[n] }
}
`;
// x = (2.301 − 2.300)·500 = 500 g·mm, y = 0 (computed).
const TABLE = "position,serial,mass\n3,SG-3,2.300 kg\n1,SG-1,2.301 kg\n2,SG-2,2.310 kg\n4,SG-4,2.310 kg\n";

function made(wishes: Wishes = {}, text = TEXT, table = TABLE): Made {
  return makeFrom(workspace(text, table), "main.sprag", 0, wishes);
}

function workspace(text: string, table: string) {
  const texts = new Map([
    ["main.sprag", text],
    ["t.csv", table],
  ]);
  return openWorkspace({ texts, present: new Set(), absent: new Set(), today: "2026-05-04" });
}

describe("the list", () => {
  test("stands in the order of the positions, with what is left, its limit and the caution", () => {
    const [block] = made({ units: "si" }).document.arrangements;
    expect(block?.rows).toEqual([
      { position: "1", serial: "SG-1", weight: "2.301 kg" },
      { position: "2", serial: "SG-2", weight: "2.310 kg" },
      { position: "3", serial: "SG-3", weight: "2.300 kg" },
      { position: "4", serial: "SG-4", weight: "2.310 kg" },
    ]);
    expect(block).toMatchObject({ residual: "500.0 g·mm", limits: ["at most 600 g·mm"], measure: "Mass" });
    expect(block?.caution).toContain("one plane");
    expect(block?.figure?.marks).toHaveLength(4);
  });

  test("is in both formats", () => {
    const { html, md } = made({ units: "si" });
    expect(html).toContain("<h2>Which tooth segment goes where in the segment seat</h2>");
    expect(html).toContain('<th scope="row">3</th><td class="serial">SG-3</td><td class="value">2.300 kg</td>');
    expect(html).toMatch(/<dt>Unbalance left<\/dt><dd>500\.0 g·mm<\/dd>/);
    expect(md).toContain("| 3 | SG-3 | 2.300 kg |");
    expect(md).toContain("- Unbalance left: 500.0 g·mm\n- It may be: at most 600 g·mm");
    expect(md).toContain("Numbered clockwise, seen from the drive end. At the start, position 1 is at 6 o'clock.");
  });

  test("of many positions has no drawing, and says from where they are counted", () => {
    const rows = Array.from({ length: 61 }, (_, at) => `${at + 1},S${at + 1},2 kg\n`).join("");
    const text = TEXT.replace("count 4", "count 61").replace("1..4", "1..61").replace("from 4 down", "from 61 down");
    const [block] = made({}, text, `position,serial,mass\n${rows}`).document.arrangements;
    expect(block?.figure).toBeNull();
    expect(block?.view).toContain("seen from the drive end");
    expect(block?.rows).toHaveLength(61);
    expect(block?.residual).toMatch(/^0 g·mm/);
  });

  test("names the grade beside what it permits", () => {
    const graded = TEXT.replace("unbalance at most 600 g·mm", 'mass 200 kg  speed 1500 rpm  grade "G16"');
    // 200 kg · 16 mm/s / (2π · 25 1/s) = 20372 g·mm (ISO 21940-11; second; computed).
    expect(made({ units: "si" }, graded).document.arrangements[0]?.limits).toEqual([
      "at most 20300 g·mm (G16 at 1500 rpm)",
    ]);
  });

  test.each([
    ["there is no arrangement", TEXT.replace(/^arrangement.*\n/m, ""), TABLE],
    ["a position holds no part", TEXT, TABLE.replace(/4,SG-4.*\n/, "")],
    ["the table cannot be read", TEXT, TABLE.replaceAll(" kg", "")],
    ["nothing of it is installed", TEXT.replace(/^ {2}(?:finish|repeat).*\n/gm, ""), TABLE],
  ])("is not there where %s", (_, text, table) => {
    const { document, html } = made({}, text, table);
    expect(document.arrangements).toEqual([]);
    expect(html).not.toContain("SG-1");
  });
});

test("what the table says is text in every format", () => {
  const hostile = TABLE.replace("SG-3", "<script>x</script>|*b*");
  const { html, md } = made({ units: "si" }, TEXT, hostile);
  expect(html).not.toContain("<script>x");
  expect(html).toContain("&lt;script&gt;x&lt;/script&gt;|*b*");
  expect(md).toContain("&lt;script&gt;x&lt;/script&gt;\\|\\*b\\*");
});

describe("the step", () => {
  const details = ({ document }: Made): readonly string[] =>
    stepsIn(document).flatMap(({ blocks }) => blocks.flatMap((one) => (one.kind === "instruction" ? one.details : [])));

  test("says the serials in the order of the work where a repeat stands once", () => {
    expect(details(made())).toEqual(["Serials by position: 4: SG-4, 3: SG-3, 2: SG-2, 1: SG-1."]);
  });
  test("says its own where each is written out", () => {
    expect(details(made({ repeats: "full" }))).toEqual([
      "Serial: SG-4.",
      "Serial: SG-3.",
      "Serial: SG-2.",
      "Serial: SG-1.",
    ]);
  });
  test("knows the position by the part's number where none is named", () => {
    expect(details(made({}, TEXT.replace("in Seat[n] }", "}")))).toHaveLength(1);
  });
});

test("the content hash of the checklist changes with the table, and only with that of its own arrangement", () => {
  const hash = (text: string, table: string): string => {
    const request = {
      path: "main.sprag",
      as: "checklist",
      format: "md",
      units: "si",
      repeats: "compact",
      draft: true,
    } as const;
    return /[0-9a-f]{64}/.exec(exportText(workspace(text, table), request))?.[0] ?? "none";
  };
  expect(hash(TEXT, TABLE)).not.toBe(hash(TEXT, TABLE.replace("SG-4", "SG-5")));
  const without = TEXT.replace(/^arrangement.*\n/m, "");
  expect(hash(without, TABLE)).toBe(hash(without, ""));
  expect(hash(without, TABLE)).toMatch(/^[0-9a-f]{64}$/);
});

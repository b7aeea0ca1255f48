// `sprag arrange`: the table as it was, with positions; never over what it is made from; the same each time.
import { describe, expect, test } from "vitest";
import { folderWith } from "#harness/command.ts";

const RING = (count: number, lines = "radius 500 mm  unbalance at most 600 g·mm"): string => `ring R {
  count ${count}
  numbered clockwise seen from "drive end"
  position 1 at 12 o'clock
}
part S[1..${count}] "segment" { seats in R by number }
arrangement Order of S in R { ${lines}  from "t.csv" }
`;
const FOUR = "position,serial,mass\n1,A,1003 g\n2,B,1002 g\n3,C,1000 g\n4,D,1001 g\n";

const arranged = (
  csv: string,
  { count = 4, lines, args = [] }: { count?: number; lines?: string; args?: string[] } = {},
) => folderWith({ "r.sprag": RING(count, lines), "t.csv": csv }).sprag("arrange", "r.sprag", ...args);

describe("the proposal", () => {
  test("is the table in the order of its positions, and what is left stands beside it", () => {
    // 1003 and 1002 across from each other, 1001 and 1000: 1 g each way at 500 mm, √2 · 500 = 707 g·mm (computed).
    expect(arranged(FOUR)).toMatchInlineSnapshot(`
      {
        "err": "Order: 4 parts on R, 2 keep the position that the table gives them.
        before    1581 g·mm
        proposed  707.1 g·mm
        least     no order leaves less
        limit     at most 600 g·mm, not kept by this set
      ",
        "out": "position,serial,mass
      1,D,1001 g
      2,B,1002 g
      3,C,1000 g
      4,A,1003 g
      ",
        "status": 1,
      }
    `);
  });

  test("keeps columns, separators and line ends, and adds the positions where there are none", () => {
    const { out, status } = arranged(
      'serial;cast;mass (g)\r\nA;"x;y";1003,5\r\n=B;z;1003,5\r\nC;;1000\r\nD\t;q;1000\r\n',
    );
    expect(status).toBe(0);
    const lines = out.split("\r\n");
    expect(lines[0]).toBe("position;serial;cast;mass (g)");
    expect(lines.slice(1, 5).map((line) => line.slice(0, 2))).toEqual(["1;", "2;", "3;", "4;"]);
    expect(out).toContain(';A;"x;y";1003,5\r\n');
    // What a spreadsheet would take for a formula is marked, and read back without the mark.
    expect(out).toContain(";'=B;z;1003,5\r\n");
    expect(lines.at(-1)).toBe("");
  });

  test("is free of findings once it is the table, and then all stay", () => {
    const weights = [2304, 2298, 2311, 2287, 2293, 2306, 2315, 2290, 2301, 2299, 2312, 2288];
    const csv = `serial,mass\n${weights.map((weight, at) => `S-${at},${weight} g\n`).join("")}`;
    const folder = folderWith({ "r.sprag": RING(12), "t.csv": csv });
    expect(folder.sprag("check", "r.sprag").status).toBe(1);
    expect(folder.sprag("arrange", "r.sprag", "--out", "new.csv")).toMatchObject({ status: 0, out: "" });
    const after = folderWith({ "r.sprag": RING(12), "t.csv": folder.read("new.csv") });
    expect(after.sprag("check", "r.sprag")).toMatchObject({ status: 0 });
    const again = after.sprag("arrange", "r.sprag");
    expect(again.err).toContain("12 parts on R, all keep the position that the table gives them");
    expect(again.out).toBe(folder.read("new.csv"));
  });

  test("leaves fixed parts where they are", () => {
    const { out } = arranged("position,serial,mass,fixed\n3,A,1003 g,yes\n,B,1002 g,\n,C,1000 g,\n1,D,1001 g,x\n");
    expect(out).toMatch(/^3,A,/m);
    expect(out).toMatch(/^1,D,/m);
  });

  test("of many parts says how far from the least possible it may be", () => {
    const rows = Array.from({ length: 24 }, (_, at) => `S-${at},${2200 + ((at * 37) % 91)} g\n`).join("");
    const { err, status } = arranged(`serial,mass\n${rows}`, { count: 24 });
    expect(status).toBe(0);
    expect(err).toMatch(/least {5}no order leaves less than 0 g·mm; the gap is [\d.]+ g·mm/);
  });

  test("that still is above the limit is written, and says so by the exit status", () => {
    const { err, out, status } = arranged("serial,mass\nA,1003 g\nB,1000 g\nC,1000 g\nD,1000 g\n");
    expect(status).toBe(1);
    expect(out).toMatch(/^position,serial,mass\n/);
    expect(err).toContain("1500 g·mm");
    expect(err).toContain("not kept by this set");
  });

  test("without a radius speaks of mass; of moments needs none", () => {
    expect(arranged("serial,mass\nA,1003 g\nB,1000 g\nC,1000 g\nD,1000 g\n", { lines: "" }).err).toContain(
      "3.000 g at the radius, which is not given",
    );
    const moments = arranged("serial,moment (g·mm)\nA,5100\nB,5000\nC,5000\nD,5000\n", {
      lines: "unbalance at most 600 g·mm",
    });
    expect(moments.err).toContain("proposed  100.0 g·mm");
    expect(moments.status).toBe(0);
  });
});

describe("what is refused", () => {
  const refusal = (files: Readonly<Record<string, string>>, ...args: string[]): string => {
    const { err, out, status } = folderWith(files).sprag("arrange", ...args);
    expect(status).toBe(2);
    expect(out).toBe("");
    return err;
  };
  const both = { "r.sprag": RING(4), "t.csv": FOUR };

  test("writing over the table or the text", () => {
    for (const out of ["t.csv", "./t.csv", "r.sprag"]) {
      const folder = folderWith(both);
      const { err, status } = folder.sprag("arrange", "r.sprag", "--out", out);
      expect(status).toBe(2);
      expect(err).toBe(`sprag: ${out} is what the proposal is made from. Give --out another name.\n`);
      expect(folder.read("t.csv")).toBe(FOUR);
      expect(folder.read("r.sprag")).toBe(RING(4));
    }
  });

  test("a table in place of the text, no arrangement, several, one without a table", () => {
    const table = "sprag: t.csv is a table. Give the .sprag file that declares its arrangement.\n";
    expect(refusal(both, "t.csv")).toBe(table);
    expect(folderWith(both).sprag("check", "t.csv")).toEqual({ status: 2, out: "", err: table });
    expect(refusal({ "a.sprag": 'part A "a"\n' }, "a.sprag")).toContain("declares no arrangement.");
    const two = `${RING(4)}arrangement Other of S in R { }\n`;
    expect(refusal({ ...both, "r.sprag": two }, "r.sprag")).toContain(
      "declares 2 arrangements. Name one with --arrangement: Order, Other.",
    );
    expect(refusal({ ...both, "r.sprag": two }, "r.sprag", "--arrangement", "Othr")).toContain("Nearest: Other.");
    expect(refusal({ ...both, "r.sprag": two }, "r.sprag", "--arrangement", "Other")).toContain("names no table");
  });

  test("more or fewer parts than positions, and two fixed in one place", () => {
    expect(refusal({ ...both, "r.sprag": RING(5) }, "r.sprag")).toContain(
      "t.csv has 4 parts, and R has 5 positions. Give one part for each position.",
    );
    const fixed = "position,serial,mass,fixed\n1,A,1 kg,x\n1,B,1 kg,x\n3,C,1 kg,\n4,D,1 kg,\n";
    expect(refusal({ ...both, "t.csv": fixed }, "r.sprag")).toContain("fixes two parts in one position");
  });

  test("a table that cannot be read shows what is wrong in it", () => {
    const { err, out, status } = arranged("serial,mass\nA,1\nB,1\nC,1\nD,1\n");
    expect([status, out]).toEqual([1, ""]);
    expect(err).toContain("t.csv, line 2: “1” has no unit.");
    expect(err).toContain("Nothing was arranged");
    const missing = folderWith({ "r.sprag": RING(4) }).sprag("arrange", "r.sprag");
    expect(missing).toMatchObject({ status: 1, out: "" });
    expect(missing.err).toContain("“t.csv” is not there.");
    const latin = folderWith({ "r.sprag": RING(4), "t.csv": Buffer.from("serial,mass\nS\xfcd,1 kg\n", "latin1") });
    expect(latin.sprag("arrange", "r.sprag")).toMatchObject({ status: 2, out: "" });
    expect(arranged("serial,mass\nA,1 kg\nA,1 kg\nB,1 kg\nC,1 kg\n").err).toContain("t.csv has A twice.");
  });
});

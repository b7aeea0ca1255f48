// `sprag export`: what is written, where, and that nothing is written or lost where it cannot be.
import { chmodSync, mkdirSync, readdirSync, statSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { definitionsFor } from "#cli/commands.ts";
import { run } from "#cli/program.ts";
import { folderWith } from "#harness/command.ts";
import { CLEAN, OPTIONS, TWICE, TWO } from "./texts.ts";

const export_ = ["export", "a.sprag", "--as", "checklist"];

describe("a checklist", () => {
  test.each([
    ["html", /^<!doctype html>/i],
    ["md", /^# Fit the seal/],
  ])("as %s goes to standard output", (format, begins) => {
    const { status, out, err } = folderWith({ "a.sprag": CLEAN }).sprag(...export_, "--format", format);
    expect({ status, err }).toEqual({ status: 0, err: "" });
    expect(out).toMatch(begins);
    expect(out).toContain("Install the shaft seal");
  });

  test("goes to a file with --out, with the same bytes each time, and nothing beside it", () => {
    const folder = folderWith({ "a.sprag": CLEAN });
    expect(folder.sprag(...export_, "--out", "a.html")).toEqual({ status: 0, out: "", err: "a.html is written.\n" });
    expect(folder.read("a.html")).toBe(folder.sprag(...export_).out);
    expect(readdirSync(folder.path).sort()).toEqual(["a.html", "a.sprag"]);
  });

  test("takes the place of an older one, and keeps its mode", () => {
    const folder = folderWith({ "a.sprag": CLEAN, "a.html": "old" });
    chmodSync(join(folder.path, "a.html"), 0o640);
    folder.sprag(...export_, "--out", "a.html");
    expect(folder.read("a.html")).toContain("Install the shaft seal");
    expect(statSync(join(folder.path, "a.html")).mode & 0o777).toBe(0o640);
  });

  test("is written where a link leads, and the link stays", () => {
    const folder = folderWith({ "a.sprag": CLEAN, "docs/a.html": "old" });
    symlinkSync("docs/a.html", join(folder.path, "link.html"));
    folder.sprag(...export_, "--out", "link.html");
    expect(folder.read("docs/a.html")).toContain("Install the shaft seal");
  });

  test("follows --units, --repeats and --set", () => {
    const text = `option Extent "extent of work" { Full "full overhaul"  Reseal "reseal only" }
tool Wrench "torque wrench"
part Bolt[1..3] "long bolt" { thread "M10x1.5" }
procedure Fit "Fit the bolts" {
  begin with Bolt[1] is installed
  repeat n in 2, 3 { step install Bolt[n] }
  when Extent is Full { step tighten Bolt[1] to 40 N·m with Wrench }
}
`;
    const folder = folderWith({ "a.sprag": text });
    const made = (...flags: string[]) => folder.sprag(...export_, "--format", "md", ...flags).out;
    expect(made("--units", "us")).toMatch(/lbf·(?:ft|in)/);
    expect(made("--units", "si")).not.toMatch(/lbf·(?:ft|in)/);
    expect(made("--repeats", "full")).not.toBe(made("--repeats", "compact"));
    expect(made("--set", "Extent=Reseal")).not.toContain("40 N·m");
    expect(made("--set", "Extent=Full")).toContain("full overhaul");
  });
});

describe("with errors in the procedure", () => {
  test("nothing is written, and they are listed, status 1", () => {
    const folder = folderWith({ "a.sprag": TWICE, "a.html": "old" });
    const { status, out, err } = folder.sprag(...export_, "--out", "a.html");
    expect({ status, out }).toEqual({ status: 1, out: "" });
    expect(err).toContain("a.sprag:5:8  error  order.already-installed");
    expect(err).toContain(
      "Nothing was written: 1 error to mend. With --draft it is written all the same, marked DRAFT.",
    );
    expect(folder.read("a.html")).toBe("old");
  });

  test("a draft says that it is one", () => {
    const { status, out } = folderWith({ "a.sprag": TWICE }).sprag(...export_, "--format", "md", "--draft");
    expect(status).toBe(0);
    expect(out).toContain("DRAFT");
    expect(out).toContain("order.already-installed");
  });

  test("those of a choice that was not made do not count", () => {
    const folder = folderWith({ "a.sprag": OPTIONS });
    expect(folder.sprag(...export_, "--set", "Extent=Full").status).toBe(0);
    expect(folder.sprag(...export_, "--set", "Extent=Reseal").status).toBe(1);
    expect(folder.sprag(...export_).status).toBe(1);
  });
});

describe("whose errors count", () => {
  const OPENING = 'part Seal "shaft seal"\n';
  const UNFIT = 'procedure TakeSeal "Take the seal out" { step remove Seal }\n';
  const FIT = 'procedure FitSeal "Fit the seal" { step install Seal }\n';

  test("not those of another procedure of the file", () => {
    const folder = folderWith({ "a.sprag": OPENING + FIT + UNFIT });
    expect(folder.sprag(...export_, "--procedure", "FitSeal").status).toBe(0);
    expect(folder.sprag(...export_, "--procedure", "TakeSeal").status).toBe(1);
  });

  test("those of a procedure that it performs, also in another file", () => {
    const all = 'procedure All "All" { step perform TakeSeal }\n';
    const begun = UNFIT.replace("{", "{ begin with Seal is removed\n");
    expect(folderWith({ "a.sprag": OPENING + begun + all }).sprag(...export_, "--procedure", "All").status).toBe(1);
    const { status, err } = folderWith({
      "shop.sprag": OPENING + begun + FIT,
      "a.sprag": `use "shop.sprag"\n${all}`,
    }).sprag(...export_);
    expect(status).toBe(1);
    expect(err).toContain("shop.sprag:3:7  error  order.not-installed");
  });

  test("those of what the files it uses declare", () => {
    const files = { "shop.sprag": 'part Seal "seal" { mass 3 J }\n', "a.sprag": `use "shop.sprag"\n${FIT}` };
    const { status, err } = folderWith(files).sprag(...export_);
    expect(status).toBe(1);
    expect(err).toContain("units.mismatch");
  });
});

describe("a call that cannot be followed is refused, status 2", () => {
  const files = { "a.sprag": CLEAN, "two.sprag": TWO, "lib.sprag": 'part Seal "seal"\n', "sub/b.sprag": CLEAN };
  test.each([
    [["a.sprag", "--as", "checklst"], "--as cannot be “checklst”. Nearest: checklist."],
    [
      ["a.sprag", "--format", "rtf"],
      "--format of a checklist cannot be “rtf”. There are: html, pdf, docx, md, csv, json.",
    ],
    [["a.sprag", "--units", "metric"], "--units cannot be “metric”. There are: si, us, both."],
    [["a.sprag", "--repeats", "ful"], "--repeats cannot be “ful”. Nearest: full."],
    [["two.sprag"], "two.sprag holds 2 procedures. Name one with --procedure: FitSeal, TakeSeal."],
    [["two.sprag", "--procedure", "FitSeel"], "two.sprag holds no procedure FitSeel. Nearest: FitSeal."],
    [["a.sprag", "--procedure", "Other"], "a.sprag holds no procedure Other. There is: FitSeal."],
    [["lib.sprag"], "lib.sprag holds no procedure to write."],
    [["a.sprag", "--answers"], "--answers goes with --as trainee."],
    [["sub"], "sub is a folder. Give one file of it."],
    [["gone.sprag"], "gone.sprag is not there."],
    [["a.sprag", "--set", "Extent=Full"], "--set: no option is called Extent. There is none."],
    [["a.sprag", "--out", "sub"], "sub is a folder, not a file."],
    [["a.sprag", "--out", "nowhere/a.html"], "nowhere/a.html could not be written: its folder is not there."],
    [["a.sprag", "--out", "a.sprag"], "a.sprag is what the document is made from. Give --out another name."],
    [
      ["a.sprag", "--out", "sub/../a.sprag"],
      "sub/../a.sprag is what the document is made from. Give --out another name.",
    ],
  ])("%j", (args, message) => {
    const folder = folderWith(files);
    expect(folder.sprag("export", ...args)).toEqual({ status: 2, out: "", err: `sprag: ${message}\n` });
    expect(folder.read("a.sprag")).toBe(CLEAN);
  });

  test("also where the target is a file that the procedure uses", () => {
    const folder = folderWith({
      "lib.sprag": 'part Seal "seal"\n',
      "a.sprag": 'use "lib.sprag"\nprocedure P "p" { step install Seal }\n',
    });
    expect(folder.sprag(...export_, "--out", "lib.sprag").status).toBe(2);
    expect(folder.read("lib.sprag")).toBe('part Seal "seal"\n');
  });

  test("also where a file that the procedure uses cannot be read, since the document would lack it", () => {
    const folder = folderWith({
      "lib.sprag": Buffer.from([0]),
      "a.sprag": 'use "lib.sprag"\nprocedure P "p" { step "x." }\n',
    });
    expect(folder.sprag(...export_, "--draft")).toEqual({
      status: 2,
      out: "",
      err: "sprag: lib.sprag is not text: it holds zero bytes.\n",
    });
  });
});

test("bytes are not poured into a terminal", async () => {
  const folder = folderWith({ "a.sprag": CLEAN });
  const out: unknown[] = [];
  const err: unknown[] = [];
  const status = await run(
    ["export", "a.sprag", "--as", "assessor", "--format", "xlsx"],
    {
      ...{ cwd: folder.path, env: {}, now: () => new Date(0), serve: () => {} },
      asset: () => Promise.reject(new Error("none is needed")),
      out: { write: (content) => void out.push(content), isTerminal: true, columns: 80 },
      err: { write: (content) => void err.push(content), isTerminal: false, columns: null },
    },
    await definitionsFor(["export"]),
  );
  const told = "sprag: the document is no text for a terminal. Say with --out where to write it.\n";
  expect({ status, out, err }).toEqual({ status: 2, out: [], err: [told] });
});

test("one of several procedures is written by name", () => {
  const { out } = folderWith({ "a.sprag": TWO }).sprag(...export_, "--format", "md", "--procedure", "TakeSeal");
  expect(out).toMatch(/^# Take the seal out/);
});

test("a folder that cannot take the file leaves nothing behind", () => {
  const folder = folderWith({ "a.sprag": CLEAN });
  mkdirSync(join(folder.path, "a.html", "in-it"), { recursive: true });
  expect(folder.sprag(...export_, "--out", "a.html").status).toBe(2);
  expect(readdirSync(folder.path).sort()).toEqual(["a.html", "a.sprag"]);
});

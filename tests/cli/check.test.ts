// `sprag check`: exit statuses, what is counted, options of the work, folders, and the same bytes each time.
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { folderWith } from "#harness/command.ts";
import { CLEAN, IDLE_ALLOW, OPTIONS, STYLE, TWICE } from "./texts.ts";

interface Report {
  readonly files: readonly { readonly path: string; readonly findings: readonly { readonly code: string }[] }[];
  readonly summary: Readonly<Record<string, number>>;
}

function codes({ out }: { out: string }): readonly string[] {
  return (JSON.parse(out) as Report).files.flatMap((file) => file.findings.map((finding) => finding.code));
}

describe("the exit status", () => {
  test.each([
    ["nothing found", CLEAN, [], 0],
    ["an error", TWICE, [], 1],
    ["an error, where warnings fail too", TWICE, ["--fail-on", "warning"], 1],
    ["a warning", IDLE_ALLOW, [], 0],
    ["a warning, where warnings fail", IDLE_ALLOW, ["--fail-on", "warning"], 1],
    ["a warning, where information fails", IDLE_ALLOW, ["--fail-on", "information"], 1],
    ["a hint, which never fails", STYLE, ["--fail-on", "information"], 0],
  ])("with %s", (_title, text, flags, status) => {
    expect(folderWith({ "a.sprag": text }).sprag("check", "a.sprag", ...flags)).toMatchObject({ status, err: "" });
  });

  test("does not count what the text allows", () => {
    const allowed = TWICE.replace(
      /install Seal\n}/,
      'install Seal allow order.already-installed because "Twin seal."\n}',
    );
    const { status, out } = folderWith({ "a.sprag": allowed }).sprag("check", "a.sprag");
    expect(status).toBe(0);
    expect(out).toContain("a.sprag:5:8  allowed  order.already-installed");
    expect(out).toContain("because  Twin seal.");
    expect(out).toContain("1 allowed in 1 file; 1 procedure, 2 steps checked.");
  });

  test("is 2 where one file could not be used, and the others are checked all the same", () => {
    const { status, out, err } = folderWith({ "a.sprag": TWICE }).sprag("check", "a.sprag", "b.sprag");
    expect(status).toBe(2);
    expect(out).toContain("order.already-installed");
    expect(err).toBe("sprag: b.sprag is not there.\n");
  });

  test("is 2, with nothing on standard output, where no file could be used", () => {
    const called = folderWith().sprag("check", "b.sprag", "--format", "json");
    expect(called).toEqual({ status: 2, out: "", err: "sprag: b.sprag is not there.\n" });
  });
});

describe("JSON", () => {
  test("lists all files sorted by path, each once, also those without findings", () => {
    const folder = folderWith({ "b.sprag": CLEAN, "a.sprag": TWICE, "sub/c.sprag": CLEAN, "B.sprag": CLEAN });
    const { out } = folder.sprag("check", "sub", "b.sprag", ".", "--format", "json");
    const { files, summary } = JSON.parse(out) as Report;
    expect(files.map((file) => file.path)).toEqual(["B.sprag", "a.sprag", "b.sprag", "sub/c.sprag"]);
    expect(summary).toEqual({
      ...{ errors: 1, warnings: 0, information: 0, hints: 0, allowed: 0 },
      ...{ files: 4, procedures: 4, steps: 5 },
    });
  });

  test("is indented by two and ends in one new line", () => {
    const { out } = folderWith({ "a.sprag": TWICE }).sprag("check", "a.sprag", "--format", "json");
    expect(out).toBe(`${JSON.stringify(JSON.parse(out), null, 2)}\n`);
  });

  test("has the same bytes however often and however the files are named", () => {
    const folder = folderWith({ "a.sprag": TWICE, "b.sprag": IDLE_ALLOW });
    const one = folder.sprag("check", ".", "--format", "json").out;
    expect(folder.sprag("check", "b.sprag", "./a.sprag", "--format", "json").out).toBe(one);
    expect(folder.sprag("check", join(folder.path, "a.sprag"), "b.sprag", "--format", "json").out).toBe(one);
    expect(folder.spragAs({ env: { FORCE_COLOR: "1" }, isTerminal: true }, "check", ".", "--format", "json").out).toBe(
      one,
    );
  });

  test("counts lines and characters from 0", () => {
    const { out } = folderWith({ "a.sprag": TWICE }).sprag("check", "a.sprag", "--format", "json");
    const [finding] = (JSON.parse(out) as { files: { findings: object[] }[] }).files[0]?.findings ?? [];
    expect(finding).toMatchObject({ range: { start: { line: 4, character: 7 }, end: { line: 4, character: 19 } } });
  });

  test("takes CR LF and a byte order mark as no part of a line", () => {
    const text = `\ufeff${TWICE.replaceAll("\n", "\r\n")}`;
    const { out } = folderWith({ "a.sprag": text }).sprag("check", "a.sprag", "--format", "json");
    expect(out).toBe(folderWith({ "a.sprag": TWICE }).sprag("check", "a.sprag", "--format", "json").out);
  });
});

describe("--set", () => {
  const folder = () => folderWith({ "a.sprag": OPTIONS });

  test("without it every choice is looked at", () => {
    expect(codes(folder().sprag("check", "a.sprag", "--format", "json"))).toEqual(["order.unfinished"]);
  });

  test.each([
    ["Extent=Full", [], 0],
    ["Extent=Reseal", ["order.unfinished"], 1],
  ])("%s looks at that choice alone, and says nothing of branches it leaves out", (choice, found, status) => {
    const called = folder().sprag("check", "a.sprag", "--set", choice, "--format", "json");
    expect(codes(called)).toEqual(found);
    expect(called.status).toBe(status);
  });

  test.each([
    ["Extend=Full", "--set: no option is called Extend. Nearest: Extent."],
    ["Colour=Red", "--set: no option is called Colour. There is: Extent."],
    ["__proto__=Red", "--set: no option is called __proto__. There is: Extent."],
    ["Extent=full", "--set: Extent cannot be full. Nearest: Full."],
    ["Extent=Half", "--set: Extent cannot be Half. There are: Full, Reseal."],
    ["Extent", "--set takes Option=Value, such as Extent=Full; “Extent” is not so."],
    ["=Full", "--set takes Option=Value, such as Extent=Full; “=Full” is not so."],
  ])("%s is refused", (choice, message) => {
    expect(folder().sprag("check", "a.sprag", "--set", choice)).toEqual({
      status: 2,
      out: "",
      err: `sprag: ${message}\n`,
    });
  });

  test("knows a letter with its accent however it was typed", () => {
    const accents = folderWith({ "a.sprag": OPTIONS.replaceAll("Reseal", "R\u00e9sumer") });
    expect(codes(accents.sprag("check", "a.sprag", "--set", "Extent=Re\u0301sumer", "--format", "json"))).toEqual([
      "order.unfinished",
    ]);
  });

  test("is refused twice for one option with two values, and taken with one", () => {
    expect(folder().sprag("check", "a.sprag", "--set", "Extent=Full", "--set", "Extent=Reseal").err).toBe(
      "sprag: --set gives Extent twice: Full and Reseal.\n",
    );
    expect(folder().sprag("check", "a.sprag", "--set", "Extent=Full", "--set", "Extent=Full").status).toBe(0);
  });

  test("is not misled by names that every object has", () => {
    const text = OPTIONS.replaceAll("Extent", "constructor");
    const odd = folderWith({ "a.sprag": text });
    expect(codes(odd.sprag("check", "a.sprag", "--format", "json"))).toEqual(["order.unfinished"]);
    expect(odd.sprag("check", "a.sprag", "--set", "constructor=Full").status).toBe(0);
  });
});

describe("files that use others", () => {
  const library = 'part Seal "shaft seal"\n';
  const user = (path: string) => `use "${path}"\nprocedure Fit "Fit the seal" { step install Seal }\n`;

  test("are checked with them, and only they are reported", () => {
    const folder = folderWith({ "work/a.sprag": user("../shop/parts.sprag"), "shop/parts.sprag": library });
    const { out, status } = folder.sprag("check", "work/a.sprag");
    expect(out).toBe("No findings in 1 file; 1 procedure, 1 step checked.\n");
    expect(status).toBe(0);
  });

  test("do not reach beyond the root", () => {
    const folder = folderWith({ "work/a.sprag": user("../shop/parts.sprag"), "shop/parts.sprag": library });
    const { out } = folder.sprag("check", "work/a.sprag", "--root", "work", "--format", "json");
    expect(codes({ out })).toContain("names.outside-workspace");
    expect((JSON.parse(out) as Report).files.map((file) => file.path)).toEqual(["a.sprag"]);
  });

  test("say which used file cannot be read", () => {
    const folder = folderWith({ "a.sprag": user("parts.sprag"), "parts.sprag": Buffer.from([0x70, 0, 0x71]) });
    const { err, status } = folder.sprag("check", "a.sprag");
    expect(err).toBe("sprag: parts.sprag is not text: it holds zero bytes.\n");
    expect(status).toBe(2);
  });

  test("find a folder in the place of a used file to be no file", () => {
    const folder = folderWith({ "a.sprag": user("parts.sprag") });
    mkdirSync(join(folder.path, "parts.sprag"));
    expect(codes(folder.sprag("check", "a.sprag", "--format", "json"))).toContain("names.outside-workspace");
  });
});

test("a terminal sees how far the work is, and nothing of it stays", () => {
  const folder = folderWith({ "a.sprag": CLEAN, "b.sprag": CLEAN });
  const { err, out } = folder.spragAs({ isTerminal: true, env: { NO_COLOR: "1" } }, "check", ".");
  expect(err).toContain("reading 1 of 2 files");
  expect(err).toContain("checking 2 files");
  expect(err.split("\r").at(-1)).toBe("\u001b[2K");
  expect(out).not.toContain("\r");
  expect(folder.sprag("check", ".").err).toBe("");
});

test.each([["2026-02-30"], ["4 May"], ["2026-13-01"]])("--on %s is no day", (day) => {
  const { err, status } = folderWith({ "a.sprag": CLEAN }).sprag("check", "a.sprag", "--on", day);
  expect({ err, status }).toEqual({
    err: `sprag: --on takes a date such as 2026-05-04; “${day}” is none.\n`,
    status: 2,
  });
});

test("--on takes a day of the calendar", () => {
  expect(folderWith({ "a.sprag": CLEAN }).sprag("check", "a.sprag", "--on", "2026-02-28").status).toBe(0);
});

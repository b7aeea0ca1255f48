// `sprag check --shard` and `sprag merge`: put together, the shards of a check are the same bytes as the check of all files.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Folder, folderWith } from "#harness/command.ts";
import { sarifTroubles } from "#harness/sarif.ts";
import { isThorough } from "#harness/thorough.ts";
import type { CheckReport } from "#workspace/report.ts";
import { SHOP_FILES } from "./shop-of-shards.ts";
import { CLEAN, TWICE } from "./texts.ts";

/** The reports of all shards, as files of the folder. */
function shards(folder: Folder, of: number, args: readonly string[], end = "out"): readonly string[] {
  return Array.from({ length: of }, (_, at) => {
    const name = `shard-${at + 1}-of-${of}.${end}`;
    writeFileSync(join(folder.path, name), folder.sprag(...args, "--shard", `${at + 1}/${of}`).out);
    return name;
  });
}

const CALLS: readonly (readonly string[])[] = [
  [],
  ["--crib", "shop/crib.sprag", "--on", "2027-02-01"],
  ["--set", "Extent=Part"],
  ["--set", "Extent=Full", "--crib", "shop/crib.sprag", "--on", "2027-01-31"],
];

describe("merged is what the check of all files prints", () => {
  test("whatever the number of shards, their order, the format and the call", () => {
    const folder = folderWith(SHOP_FILES);
    const seen = new Set<string>();
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 9 }),
        fc.constantFrom("json", "sarif"),
        fc.constantFrom(...CALLS),
        fc.infiniteStream(fc.nat()),
        (of, format, call, numbers) => {
          const args = ["check", ".", "--format", format, ...call];
          const whole = folder.sprag(...args);
          const order = shards(folder, of, args).map((name) => ({ name, at: numbers.next().value as number }));
          const merged = folder.sprag("merge", ...order.sort((a, b) => a.at - b.at).map(({ name }) => name));
          expect(merged).toEqual(whole);
          for (const code of whole.out.match(/"[a-z]+\.[a-z-]+"/g) ?? []) seen.add(code);
        },
      ),
      { numRuns: isThorough ? 40 : 8 },
    );
    // What is found in one file and hangs on another, among the rest.
    for (const code of ["names.unused", "names.use-cycle", "order.unmet-need", "order.already-installed"])
      expect(seen).toContain(`"${code}"`);
    for (const code of ["trace.calibration", "trace.unused-allow", "names.unknown"])
      expect(seen).toContain(`"${code}"`);
  });

  test.each(["json", "sarif"])("%s: as a schema of its own has it, and each file is in one shard", (format) => {
    const folder = folderWith(SHOP_FILES);
    const reports = shards(folder, 3, ["check", ".", "--format", format]).map((name) => JSON.parse(folder.read(name)));
    if (format === "sarif") expect(reports.flatMap((log) => sarifTroubles(log))).toEqual([]);
    const read = reports.map((one) => (format === "sarif" ? one.runs[0].properties.report : one) as CheckReport);
    const paths = read.flatMap(({ files }) => files.map(({ path }) => path));
    expect(new Set(paths).size).toBe(paths.length);
    expect(paths.sort()).toEqual(
      Object.keys(SHOP_FILES)
        .filter((path) => path.endsWith(".sprag"))
        .sort(),
    );
    expect(read.every(({ files }) => files.length > 0)).toBe(true);
  });

  test("also of a declaration that only a file of another shard lets stand", () => {
    const folder = folderWith(SHOP_FILES);
    const unused = (args: readonly string[]) =>
      (JSON.parse(folder.sprag("check", ...args, "--format", "json").out) as CheckReport).files.flatMap(
        ({ findings, path }) => findings.flatMap(({ code }) => (code === "names.unused" ? [path] : [])),
      );
    // By themselves all three have it; among the others only the one that nobody uses.
    expect(unused(["spare.sprag", "spare-used.sprag", "spare-behind.sprag"])).toHaveLength(3);
    expect(unused(["."])).toEqual(["spare.sprag"]);
    const each = Array.from({ length: 40 }, (_, at) => unused([".", "--shard", `${at + 1}/40`]));
    expect(each.flat()).toEqual(["spare.sprag"]);
  });

  test("also where files could not be used: the same is told, status 2", () => {
    const files = {
      "a.sprag": TWICE,
      "b.sprag": CLEAN,
      "c.sprag": Buffer.from([0x70, 0]),
      "d.sprag": 'use "c.sprag"\n',
    };
    const folder = folderWith(files);
    const args = ["check", ".", "gone.sprag", "--format", "json"];
    const whole = folder.sprag(...args);
    expect(whole).toMatchObject({ status: 2, err: expect.stringContaining("c.sprag is not text") });
    expect(folder.sprag("merge", ...shards(folder, 4, args))).toEqual(whole);
    const none = ["check", "gone.sprag", "--format", "sarif"];
    expect(folder.sprag("merge", ...shards(folder, 2, none))).toEqual(folder.sprag(...none));
  });

  test("with --fail-on and --out as other commands have them", () => {
    const folder = folderWith({
      "a.sprag": TWICE.replace(/.*\n}/, "}"),
      "idle.sprag": SHOP_FILES["idle.sprag"] ?? "",
      "shop/parts.sprag": SHOP_FILES["shop/parts.sprag"] ?? "",
    });
    const args = ["check", ".", "--format", "json"];
    const names = shards(folder, 2, args);
    expect(folder.sprag("merge", ...names).status).toBe(0);
    expect(folder.sprag("merge", ...names, "--fail-on", "warning").status).toBe(1);
    expect(folder.sprag("merge", ...names, "--out", "all.json")).toEqual({
      status: 0,
      out: "",
      err: "all.json is written.\n",
    });
    expect(folder.read("all.json")).toBe(folder.sprag(...args).out);
    const own = folder.sprag("merge", ...names, "--out", names[0] ?? "");
    expect(own).toMatchObject({
      status: 2,
      err: `sprag: ${names[0]} is what the report is made from. Give --out another name.\n`,
    });
  });
});

describe("merge refuses, and writes nothing", () => {
  const folder = () => folderWith({ "a.sprag": TWICE, "b.sprag": CLEAN, "c.sprag": CLEAN });
  const args = ["check", ".", "--format", "json"];
  const refused = (one: Folder, ...names: readonly string[]): string => {
    const { status, out, err } = one.sprag("merge", ...names);
    expect({ status, out }).toEqual({ status: 2, out: "" });
    return err;
  };

  test("where shards are missing", () => {
    const one = folder();
    const [first = "", second = "", third = ""] = shards(one, 3, args);
    expect(refused(one, first, third)).toBe("sprag: Shard 2 of 3 is missing. Give its file too.\n");
    expect(refused(one, second)).toBe("sprag: Of 3 shards, 1, 3 are missing. Give their files too.\n");
    const [many = ""] = shards(one, 1, [...args, "--shard", "1/5000"]);
    writeFileSync(join(one.path, many), one.sprag(...args, "--shard", "2/5000").out);
    expect(refused(one, many)).toBe(
      "sprag: Of 5000 shards, 1, 3, 4, 5, 6, 7, 8, 9, 10, 11 and 4989 more are missing. Give their files too.\n",
    );
  });

  test("where one is there twice", () => {
    const one = folder();
    const [first = "", second = ""] = shards(one, 2, args);
    writeFileSync(join(one.path, "copy.out"), one.read(second));
    expect(refused(one, first, second, "copy.out")).toBe(
      `sprag: ${second} and copy.out are both shard 2 of 2. Give one of them.\n`,
    );
  });

  test.each<[string, readonly string[], string]>([
    ["another number of shards", ["--shard", "2/3"], "the first is a shard of 2, the second a shard of 3."],
    [
      "other choices",
      ["--set", "Extent=Full"],
      "the first is made with no choice, the second made with --set Extent=Full.",
    ],
    ["a crib", ["--crib", "crib.sprag", "--on", "2026-05-04"], "held against the crib crib.sprag as of 2026-05-04."],
    ["fewer files", ["--root", ".", "a.sprag"], ""],
  ])("where one is of %s", (_title, other, sentence) => {
    const files = {
      "a.sprag": SHOP_FILES["choice.sprag"] ?? "",
      "shop/parts.sprag": SHOP_FILES["shop/parts.sprag"] ?? "",
    };
    const one = folderWith({
      ...files,
      "crib.sprag": (SHOP_FILES["shop/crib.sprag"] ?? "").replace("parts", "shop/parts"),
    });
    const [first = ""] = shards(one, 2, args);
    const call = other.includes("a.sprag") ? ["check", "a.sprag", "--format", "json"] : [...args, ...other];
    const shard = other.includes("--shard") ? [] : ["--shard", "2/2"];
    writeFileSync(join(one.path, "other.out"), one.sprag(...call, ...shard).out);
    const err = refused(one, first, "other.out");
    expect(err).toContain(`sprag: ${first} and other.out are of different checks: `);
    expect(err).toContain(sentence === "" ? "the first is of 3 files in all, the second of 1 file in all." : sentence);
    expect(err).toContain("Make all shards with one call, but for --shard.\n");
  });

  test("where a file was changed between them", () => {
    const one = folder();
    const [first = ""] = shards(one, 2, args);
    const before = one.read(first);
    writeFileSync(join(one.path, "b.sprag"), TWICE);
    const [, second = ""] = shards(one, 2, args);
    writeFileSync(join(one.path, first), before);
    expect(refused(one, first, second)).toContain("a file was changed, added or taken away between them.");
  });

  test("where formats are mixed", () => {
    const one = folder();
    const [first = ""] = shards(one, 2, args, "json");
    const [, second = ""] = shards(one, 2, ["check", ".", "--format", "sarif"], "sarif");
    expect(refused(one, first, second)).toBe(
      `sprag: ${first} is JSON, ${second} SARIF. Give all shards in one format.\n`,
    );
  });

  test.each<[string, string | Buffer, string]>([
    ["is no JSON", "{", "x.json is no report of a shard, or only a part of one."],
    ["is empty", "", "x.json is no report of a shard, or only a part of one."],
    ["is other JSON", '[{"runs":[null]}]', "x.json is no report of a shard, or only a part of one."],
    [
      "is the SARIF of another tool",
      '{"runs":[{"tool":{"driver":{"name":"other"}}}]}',
      "x.json is no report of a shard",
    ],
    ["is no text", Buffer.from([1, 0, 2]), "x.json is not text: it holds zero bytes."],
  ])("a file that %s", (_title, text, sentence) => {
    expect(refused(folderWith({ "x.json": text }), "x.json")).toContain(`sprag: ${sentence}`);
  });

  test("a file that is not there, and a folder", () => {
    expect(refused(folderWith(), "x.json")).toBe("sprag: x.json is not there.\n");
    expect(refused(folderWith({ "x/y.json": "" }), "x")).toBe("sprag: x is a folder, not a file.\n");
  });

  test.each(["json", "sarif"])("the report of a whole check, as %s", (format) => {
    const one = folder();
    writeFileSync(join(one.path, "x"), one.sprag("check", ".", "--format", format).out);
    expect(refused(one, "x")).toBe(
      "sprag: x is the report of a whole check. A shard is made with sprag check --shard.\n",
    );
  });

  test("a shard that was edited; one that was only laid out anew is taken", () => {
    const one = folder();
    const [name = ""] = shards(one, 1, args);
    const text = one.read(name);
    expect(text).toContain('"severity": "error"');
    for (const edited of [
      text.replace('"severity": "error"', '"severity": "hint"'),
      text.replace('"errors": 1', '"errors": 0'),
      text.replace('"of": 1', '"of": 1e12'),
      text.replace('"number": 1', '"number": 0'),
      text.replace(/"files": \[[\s\S]*\],\n {2}"summary"/, '"files": null,\n  "summary"'),
      text.replace(/"shard": {[^}]*}/, '"shard": null'),
      text.replace(/"shard": {[^}]*}/, '"shard": []'),
    ]) {
      expect(edited).not.toBe(text);
      writeFileSync(join(one.path, name), edited);
      expect(refused(one, name)).toMatch(/was changed after it was written|is no report of a shard/);
    }
    writeFileSync(join(one.path, name), JSON.stringify(JSON.parse(text)));
    expect(one.sprag("merge", name)).toEqual(one.sprag(...args));
  });
});

describe("--shard", () => {
  test.each([
    ["0/3", "--shard 0/3: shards are counted from 1. Write 1/3 to 3/3."],
    ["4/3", "--shard 4/3: shards are counted from 1. Write 1/3 to 3/3."],
    ["2/1", "--shard 2/1: shards are counted from 1. Write 1/1."],
    ["1/0", "--shard 1/0: there is no shard of none. Write 1/1 for all files."],
    ["1/99999999999", "--shard 1/99999999999: 10000 shards are the most. Make fewer of them."],
    ["1.5/2", "--shard takes i/n, such as 2/4 for the second of four shards; “1.5/2” is not so."],
    ["a/b", "--shard takes i/n, such as 2/4 for the second of four shards; “a/b” is not so."],
    ["-1/2", "--shard takes i/n, such as 2/4 for the second of four shards; “-1/2” is not so."],
    ["1", "--shard takes i/n, such as 2/4 for the second of four shards; “1” is not so."],
  ])("%s is refused", (given, message) => {
    const { status, out, err } = folderWith({ "a.sprag": CLEAN }).sprag("check", ".", "--shard", given);
    expect({ status, out, err }).toEqual({ status: 2, out: "", err: `sprag: ${message}\n` });
  });

  test("text says of which shard it is; a trace has none", () => {
    const folder = folderWith({ "a.sprag": CLEAN });
    const { out } = folder.sprag("check", ".", "--shard", "1/1");
    expect(out).toBe("Shard 1 of 1: No findings in 1 file; 1 procedure, 1 step checked.\n");
    expect(folder.sprag("check", ".", "--shard", "1/2", "--report", "trace")).toMatchObject({ status: 2, out: "" });
  });

  test("a choice that no file of the call knows is refused in each shard, one that another shard's file knows in none", () => {
    const folder = folderWith(SHOP_FILES);
    for (const shard of ["1/20", "2/20", "3/20"]) {
      const wrong = folder.sprag("check", ".", "--shard", shard, "--set", "Extend=Full");
      expect(wrong).toEqual({
        status: 2,
        out: "",
        err: "sprag: --set: no option is called Extend. Nearest: Extent.\n",
      });
      expect(folder.sprag("check", ".", "--shard", shard, "--set", "Extent=Full").err).toBe("");
    }
  });

  test("many files fall into shards of about one size", () => {
    const files = Object.fromEntries(Array.from({ length: 400 }, (_, at) => [`job-${at}/job-${at}.sprag`, ""]));
    const folder = folderWith(files);
    const sizes = [1, 2, 3, 4].map((number) => {
      const report = JSON.parse(folder.sprag("check", ".", "--format", "json", "--shard", `${number}/4`).out);
      return (report as CheckReport).files.length;
    });
    expect(sizes.reduce((so, size) => so + size)).toBe(400);
    // 100 each, by chance with a deviation of 8.7 (binomial, n = 400, p = 1/4); four of these.
    for (const size of sizes) expect(Math.abs(size - 100)).toBeLessThan(35);
  });
});

// Texts that could not be read everywhere: what is left says nothing it cannot know.
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { isUse } from "#grammar/generated/ast.ts";
import { expandProcedure } from "#model/expand.ts";
import { lowerFiles } from "#model/lower.ts";
import type { ModelProblem } from "#model/problem.ts";
import type { Item } from "#model/procedure.ts";
import { linesOf } from "#syntax/lines.ts";
import { parseText } from "#syntax/parse.ts";
import { linkFiles, resolveUse } from "#syntax/scope.ts";
import { declared, modelOf, problemsIn, procedureOf } from "./model-of.ts";

function mentionsOf(items: readonly Item[]): readonly (readonly string[])[] {
  return items.flatMap((item): readonly (readonly string[])[] => {
    if (item.kind === "damaged") return [item.mentions.map(({ name }) => name)];
    if (item.kind === "step")
      return item.lines.flatMap((line) => (line.kind === "damaged" ? [line.mentions.map(({ name }) => name)] : []));
    return item.kind === "task" ? mentionsOf(item.items) : [];
  });
}

describe("what a line that could not be read leaves in doubt", () => {
  const SHOP = "part A\npart B\npart C\nenergy E\n";
  const doubts = (body: string) => mentionsOf(procedureOf(`${SHOP}procedure P { ${body} }`).items);

  test.each([
    ["all it mentions", "step { install A over with B }", [["A", "B"]]],
    ["all there is, where its object is lost", "step { install over B }", [["A", "B", "C", "E"]]],
    ["all there is, where one of its objects is lost", "step { install A, over B }", [["A", "B", "C", "E"]]],
    ["all there is, where a jump is lost", "step { to nowhere }", [["A", "B", "C", "E"]]],
    ["what an unknown name probably means", "step install AA", [["A"]]],
    ["what a name without its index means", "step inspect C[2]", [["C"]]],
    ["nothing, where all is known", "step install A", []],
  ])("%s", (_title, body, doubt) => {
    expect(doubts(body).map((names) => [...names].sort())).toEqual(doubt);
  });

  test("a branch whose condition is not known leaves what its arms speak of", () => {
    const [block, doubt] = procedureOf(
      `${SHOP}procedure P { when Lost is yes { step install A } otherwise { step install B } }`,
    ).items;
    expect(block).toMatchObject({ kind: "when", arms: [{ condition: { form: "unknown" } }] });
    expect(doubt).toMatchObject({ kind: "damaged", mentions: [{ name: "A" }, { name: "B" }] });
  });
  test("heating to nobody knows what leaves the part in doubt", () => {
    expect(doubts("step heat A to 5 kg")).toEqual([["A"]]);
  });
  test("a lost `begin with` leaves everything in doubt, a known one nothing", () => {
    const names = (head: string) =>
      procedureOf(`${SHOP}procedure P { ${head} step install A }`).unknownAtStart.map(({ name }) => name);
    expect(names("begin with A is,")).toEqual(["A", "B", "C", "E"]);
    expect(names("begin with A is installed")).toEqual([]);
    expect(names("begin with B")).toEqual(["B"]);
  });
  test("a lost `finish with` is one, and leaves in doubt what it mentions at the end", () => {
    const procedure = procedureOf(`${SHOP}procedure P { finish with A is,\n step install B }`);
    expect(procedure.hasFinish).toBe(true);
    expect(mentionsOf(procedure.items.slice(-1))).toEqual([["A"]]);
  });
  test("a part with a line that could not be read says so", () => {
    const model = modelOf("part A { mass of 3 kg\n sharp }\npart B { sharp }\npart D { needs Lost }");
    expect(["A", "B", "D"].map((name) => declared(model, "part", name).damaged)).toEqual([true, false, true]);
    expect(model.damaged).toBe(true);
  });
});

describe("names that damage may have declared are not unknown", () => {
  test.each([
    ["its own name", "part Cover { mass { } }\nprocedure P { step install Cover }"],
    ["a name that was lost", "part { }\nprocedure P { step install Cover[3] }"],
    ["own states", "part Cover { states open shut }\nprocedure P { begin with Cover is shut }"],
    ["steps", "part Cover\nprocedure P { step Open { { }\n step { return to Open } }"],
    [
      "a count",
      "ring R { count }\npart S[1..4] { seats in R by number }\nprocedure P { repeat n from 1 to 9 { step install S[n] } }",
    ],
  ])("%s", (_title, text) => {
    expect(problemsIn(text).filter((problem) => /^(?:unknown|no |«)/.test(problem))).toEqual([]);
  });
  test("other names are", () => {
    const text = "part Cover over\nprocedure P {\n step install Flywheel }";
    expect(problemsIn(text)).toEqual(["unknown «Flywheel», wanted a part"]);
  });
});

describe("numbers stay as they were", () => {
  const lastNumber = (text: string): string => {
    const last = procedureOf(text)
      .items.filter((item) => "number" in item)
      .at(-1);
    return last !== undefined && "number" in last ? last.number : "";
  };
  test.each([
    ["a step", "step install install A"],
    ["a step without its word", "install A"],
    ["a task without its title's quotes", 'task T Cover" { step "x" }'],
  ])("%s", (_title, line) => {
    expect(lastNumber(`part A\nprocedure P {\n step "a"\n ${line}\n step "b"\n}`)).toBe("3");
  });
  test.each([
    ["a note", "note note"],
    ["a warning", 'warning warning "x"'],
    ["a source", "per per"],
    ["a head line", "ambient ambient"],
  ])("%s never had one", (_title, line) => {
    expect(lastNumber(`part A\nprocedure P {\n step "a"\n ${line}\n step "b"\n}`)).toBe("2");
  });
});

test("a line whose form is wrong is told of once", () => {
  expect(problemsIn("part A\nprocedure P {\n begin with A installed\n step install A }")).toEqual([]);
});

test("any single word less in any sample gives no problem outside the line it is missing from", {
  timeout: 90_000,
}, () => {
  const texts = new Map(samplePaths("samples").map((path) => [path, readFileSync(`samples/${path}`, "utf8")]));
  const parsed = new Map([...texts].map(([path, text]) => [path, parseText(text, path)]));
  let broken = 0;
  const told: string[] = [];
  let count = 0;
  for (const [path, text] of texts) {
    for (const word of text.matchAll(/"[^"\n]*"|[\p{L}\p{N}_.]+|[{}[\],]/gu)) {
      // Every 61st word of all samples: enough kinds of lines, in a few seconds.
      if (count++ % 61 !== 0) continue;
      const without = text.slice(0, word.index) + " ".repeat(word[0].length) + text.slice(word.index + word[0].length);
      const damaged = parseText(without, path);
      if (damaged.problems.length === 0) continue;
      broken++;
      const used = damaged.file.items.filter(isUse).map((use) => resolveUse(path, use.path) ?? "");
      const files = new Map([...parsed].filter(([each]) => used.includes(each))).set(path, damaged);
      linkFiles(files);
      const model = lowerFiles(files, () => true).get(path);
      const problems = [
        ...(model?.problems ?? []),
        ...(model?.procedures ?? []).flatMap((each) => expandProcedure(each).problems),
      ];
      const line = linesOf(text).position(word.index).line + 1;
      const isOutside = ({ span }: ModelProblem): boolean =>
        linesOf(text).position(span.start).line + 1 !== line &&
        !damaged.damage.some((each) => each.span.start <= span.end && span.start <= each.span.end);
      told.push(...problems.filter(isOutside).map((problem) => `${path}:${line} without ${word[0]}: ${problem.kind}`));
    }
  }
  expect(broken).toBeGreaterThan(50);
  expect(told).toEqual([]);
});

/** The samples that have no fault of their own. */
function samplePaths(root: string): readonly string[] {
  return readdirSync(root, { recursive: true, encoding: "utf8" })
    .map((path) => path.replaceAll("\\", "/"))
    .filter((path) => path.endsWith(".sprag") && !path.startsWith("faulty"));
}

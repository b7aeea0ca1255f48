// What the samples are found to have: those of the shop nothing at all, each faulty one the one fault it is named for.
import { AstUtils } from "langium";
import { expect, test } from "vitest";
import * as ast from "#grammar/generated/ast.ts";
import { expectMarked } from "#harness/check.ts";
import { type MarkedFile, readMarks } from "#harness/marks.ts";
import {
  findingsAt,
  isFaulty,
  isShopProcedure,
  openSamples,
  type PlacedFinding,
  plainTexts,
  sampleTexts,
  tables,
} from "#harness/samples.ts";
import { RULES } from "#rules/index.ts";
import { parseText } from "#syntax/parse.ts";

const workspace = openSamples();
const sound = [...sampleTexts.keys()].filter((path) => !isFaulty(path));
const shopProcedures = sound.filter(isShopProcedure);
const faulty: readonly MarkedFile[] = [...sampleTexts]
  .filter(([path]) => isFaulty(path))
  .flatMap(([path, text]) => readMarks(text).map((file) => ({ ...file, path })));

const told = ({ path, finding }: PlacedFinding): string =>
  `${path}:${finding.range.start.line + 1} ${finding.severity} ${finding.code} ${finding.message}`;

test("there are samples of each sort", () => {
  expect(shopProcedures.length).toBeGreaterThanOrEqual(5);
  expect(sound.filter((path) => path.startsWith("shop/")).length).toBeGreaterThan(3);
  expect(sound.filter((path) => path.startsWith("language/")).length).toBeGreaterThan(7);
  expect(faulty.length).toBeGreaterThan(30);
});

test("outside faulty/ no sample has an error or a warning", () => {
  const found = findingsAt(workspace, sound).filter(
    ({ finding }) => finding.allowed === undefined && ["error", "warning"].includes(finding.severity),
  );
  expect(found.map(told)).toEqual([]);
  expect(workspace.check(sound).summary.procedures).toBeGreaterThanOrEqual(9);
});

test.each(shopProcedures)("%s: no finding of any weight, and nothing allowed", (path) => {
  expect(findingsAt(workspace, [path]).map(told)).toEqual([]);
  const { file, problems } = parseText(sampleTexts.get(path) ?? "", path);
  expect(problems).toEqual([]);
  expect(file.items.some(ast.isProcedure)).toBe(true);
  expect([...AstUtils.streamAllContents(file)].filter(ast.isAllow)).toEqual([]);
});

test.each(faulty)("$path: exactly what its marks say", (file) => {
  expect(file.marks.length).toBeGreaterThan(0);
  const beside = [...plainTexts, ...tables].filter(([path]) => isFaulty(path) && path !== file.path);
  // What is found with a crib holds its own.
  const isWithCrib = RULES.some(({ code, page }) => page.crib === true && file.path === `faulty/${code}.sprag`);
  expectMarked([file], isWithCrib ? { crib: file.path } : {}, Object.fromEntries(beside));
});

test("each rule has its faulty sample, named for it and with that code alone", () => {
  const named = faulty.filter(({ path }) => !path.startsWith("faulty/parts/"));
  expect(named.map(({ path }) => path).sort()).toEqual(RULES.map(({ code }) => `faulty/${code}.sprag`).sort());
  for (const { path, marks } of named) {
    expect(new Set(marks.map(({ code }) => `faulty/${code}.sprag`))).toEqual(new Set([path]));
  }
});

// In which rounds a mutant goes through its tests.

const LONG = 150;
const ALL = Number.POSITIVE_INFINITY;
/**
 * The tests that a mutant goes through, round after round, and at most for how long in milliseconds; what is noticed in an earlier
 * round is not tried again. Most are noticed by the first few tests of a sort, so that few go through all.
 */
export const ROUNDS = [
  { name: "the shortest tests of the analysis", isOf: isShortOfAnalysis, most: 300 },
  { name: "more of them", isOf: isShortOfAnalysis, most: 1500 },
  { name: "the shortest tests of rules and whole jobs", isOf: isShortOfRules, most: 1500 },
  { name: "the shortest tests of all that builds on it", isOf: isShortOfUses, most: 1500 },
  { name: "all short tests of the analysis", isOf: isShortOfAnalysis, most: ALL },
  { name: "all short tests of rules and whole jobs", isOf: isShortOfRules, most: ALL },
  { name: "all short tests of what builds on it", isOf: isShortOfUses, most: ALL },
  { name: "long and random tests", isOf: () => true, most: 60_000 },
];
/** So many rounds are the usual ones; the rest only where it is asked for. */
export const USUAL = ROUNDS.length - 1;

function isShortOfAnalysis({ file, ms }) {
  return file.startsWith("tests/analysis/") && ms < LONG;
}

function isShortOfUses({ file, ms }) {
  return /^tests\/(outputs|review|server|cli)\//.test(file) && ms < LONG;
}

function isShortOfRules(test) {
  return test.ms < LONG && !isShortOfAnalysis(test) && !isShortOfUses(test);
}

// In which rounds a mutant goes through its tests.

const LONG = 150;
/**
 * The tests that a mutant goes through, round after round, and at most for how long in milliseconds; what is noticed in an earlier
 * round is not tried again. Most are noticed by the first few tests, so that few go through all.
 */
export const ROUNDS = [
  { name: "the shortest tests of the analysis", isOf: isShortOfAnalysis, most: 300 },
  { name: "more of them", isOf: isShortOfAnalysis, most: 1500 },
  { name: "all short tests of the analysis", isOf: isShortOfAnalysis, most: Number.POSITIVE_INFINITY },
  { name: "short tests of rules and whole jobs", isOf: ({ ms }) => ms < LONG, most: Number.POSITIVE_INFINITY },
  { name: "long and random tests", isOf: () => true, most: 60_000 },
];
/** So many rounds are the usual ones; the rest only where it is asked for. */
export const USUAL = ROUNDS.length - 1;

function isShortOfAnalysis({ file, ms }) {
  return file.startsWith("tests/analysis/") && ms < LONG;
}

// The words of the language for states that nobody has to declare. Knows not what they mean.

/** The states every part can be in, beside its own. */
export const PART_STATES: readonly string[] = [
  "installed",
  "removed",
  "loose",
  "tightened",
  "secured",
  "clean",
  "lubricated",
  "aligned",
];
export const ENERGY_STATES: readonly string[] = ["isolated", "live"];

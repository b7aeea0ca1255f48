// Words of the trade that the language says otherwise: what each is called here. Whether it fits there is for the grammar to say.

/** The word of the language for one that writers put in its place; null where there is none. */
export function wordFor(written: string): string | null {
  const word = written.toLowerCase();
  return Object.hasOwn(CALLED, word) ? (CALLED[word] as string) : null;
}

const CALLED: Readonly<Record<string, string>> = {
  ...calledSo("use", "include import require"),
  ...calledSo("tighten", "fasten torque"),
  ...calledSo("loosen", "slacken undo untighten"),
  ...calledSo("install", "mount insert assemble attach"),
  ...calledSo("remove", "dismount detach uninstall extract withdraw dismantle"),
  ...calledSo("discard", "scrap"),
  ...calledSo("lubricate", "grease oil lube"),
  ...calledSo("clean", "wipe degrease wash"),
  ...calledSo("heat", "warm"),
  ...calledSo("cool", "chill"),
  ...calledSo("inspect", "examine"),
  ...calledSo("lift", "hoist raise"),
  ...calledSo("turn", "rotate"),
  ...calledSo("drain", "empty"),
  ...calledSo("bleed", "vent"),
  ...calledSo("mass", "weight weighs"),
  ...calledSo("count", "quantity qty"),
  ...calledSo("counterclockwise", "anticlockwise ccw acw"),
  ...calledSo("clockwise", "cw"),
  ...calledSo("cross", "star diagonal crisscross"),
  ...calledSo("revision", "rev issue"),
  ...calledSo("dated", "date"),
  ...calledSo("expect", "expected"),
  ...calledSo("takes", "duration"),
};

function calledSo(word: string, others: string): Record<string, string> {
  return Object.fromEntries(others.split(" ").map((other) => [other, word]));
}

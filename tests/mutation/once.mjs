// Makes what does not belong to the analysis — parsing, lowering, expanding — be done once for the same text and not for each
// mutant again. What is given back is shared: nobody may change it.

/** `parseText` that knows texts it has read. */
export function parsedOnce(parseText) {
  const known = new Map();
  let held = 0;
  return (text, path) => {
    const key = `${path}\n${text}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    if (held > MOST_HELD) {
      known.clear();
      held = 0;
    }
    const parsed = parseText(text, path);
    known.set(key, parsed);
    held += text.length;
    return parsed;
  };
}
/** Characters of text: a tree takes about a thousand times as many bytes. */
const MOST_HELD = 1_000_000;

/** `lowerAgain` that knows the same files, where nothing came before them; also what it asked about others must be the same. */
export function loweredOnce(lowerAgain) {
  const known = new WeakMap();
  return (files, isPresent, tableText, earlier) => {
    if (earlier !== null) return lowerAgain(files, isPresent, tableText, earlier);
    const [first] = files.values();
    const all = [...files.values()];
    const before = (known.get(first ?? files) ?? []).find(
      (one) =>
        one.files.length === all.length &&
        one.files.every((file, at) => file === all[at]) &&
        [...one.lowered.presence].every(([path, answer]) => isPresent(path) === answer) &&
        [...one.lowered.tables].every(([path, text]) => tableText(path) === text),
    );
    if (before !== undefined) return before.lowered;
    const lowered = lowerAgain(files, isPresent, tableText, null);
    known.set(first ?? files, [...(known.get(first ?? files) ?? []), { files: all, lowered }]);
    return lowered;
  };
}

/** `expandProcedure` that knows the same procedure, expanded with the usual limit. */
export function expandedOnce(expandProcedure) {
  const known = new WeakMap();
  return (procedure, ...limit) => {
    if (limit.length > 0) return expandProcedure(procedure, ...limit);
    const made = known.get(procedure) ?? expandProcedure(procedure);
    known.set(procedure, made);
    return made;
  };
}

// The regular forms of English words: plural, possessive, and those of a verb. What is irregular a writer lists.

/** How a word differs from its base form. */
export type Form = "base" | "plural" | "possessive" | "plural possessive" | "third person" | "past" | "gerund";

/** All regular forms of a noun, in small letters as the word itself. */
export function nounForms(noun: string): ReadonlyMap<string, Form> {
  const plural = withS(noun);
  return new Map<string, Form>([
    [noun, "base"],
    [plural, "plural"],
    [`${noun}'s`, "possessive"],
    [`${plural}'`, "plural possessive"],
  ]);
}

/** All regular forms of a verb; of one with a particle (`take off`), those of its first word. */
export function verbForms(verb: string): ReadonlyMap<string, Form> {
  return new Map(VERB_FORMS.map((form) => [inForm(verb, form), form]));
}

const VERB_FORMS: readonly Form[] = ["base", "third person", "past", "gerund"];

/** The word in that form. */
export function inForm(word: string, form: Form): string {
  switch (form) {
    case "base":
      return word;
    case "plural":
      return withS(word);
    case "possessive":
      return `${word}'s`;
    case "plural possessive":
      return `${withS(word)}'`;
    case "third person":
      return onFirstWord(word, withS);
    case "past":
      return onFirstWord(word, (verb) => IRREGULAR_PAST[verb] ?? withEnding(verb, "ed"));
    case "gerund":
      return onFirstWord(word, (verb) => withEnding(verb, "ing"));
  }
}

function onFirstWord(text: string, change: (word: string) => string): string {
  const [first = "", ...rest] = text.split(" ");
  return [change(first), ...rest].join(" ");
}

function withS(word: string): string {
  if (/[^aeiou]y$/i.test(word)) return `${word.slice(0, -1)}ies`;
  return /(?:s|x|z|ch|sh)$/i.test(word) ? `${word}es` : `${word}s`;
}

function withEnding(verb: string, ending: "ed" | "ing"): string {
  if (verb.endsWith("e") && !/(?:ee|oe|ye)$/.test(verb)) return `${verb.slice(0, -1)}${ending}`;
  if (verb.endsWith("ee") && ending === "ed") return `${verb}d`;
  if (ending === "ed" && /[^aeiou]y$/.test(verb)) return `${verb.slice(0, -1)}ied`;
  // One short vowel before one consonant in a word of one syllable: fit, fitted.
  if (/^[^aeiou]*[aeiou][bdgklmnprt]$/.test(verb)) return `${verb}${verb.slice(-1)}${ending}`;
  return `${verb}${ending}`;
}

const IRREGULAR_PAST: Readonly<Record<string, string>> = {
  bend: "bent",
  cut: "cut",
  drive: "driven",
  find: "found",
  hold: "held",
  keep: "kept",
  make: "made",
  put: "put",
  read: "read",
  set: "set",
  shut: "shut",
  take: "taken",
  undo: "undone",
  wind: "wound",
  write: "written",
};

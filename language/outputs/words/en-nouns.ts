// How English writes a title in a sentence: its article, its plural. Knows no output.

/** `the` before a title, unless it begins with an article of its own or is a clause: `what is left of the gap`. */
export function withArticle(noun: string): string {
  return /^(?:the|a|an|what|how|where|when|which|whether)\s/i.test(noun) ? noun : `the ${noun}`;
}

/** The plural of a title by its last word; titles that are no plain English words are left alone. */
export function pluralOf(title: string): string {
  if (!/[a-z]$/.test(title) || /[^\x20-\x7e]/.test(title)) return title;
  for (const [one, several] of IRREGULAR) if (one.test(title)) return title.replace(one, several);
  if (/(?:ss|x|z|ch|sh)$/.test(title)) return `${title}es`;
  if (title.endsWith("s")) return title;
  if (/[^aeiou]y$/.test(title)) return `${title.slice(0, -1)}ies`;
  return `${title}s`;
}

/** Of things that a shop handles. */
const IRREGULAR: readonly (readonly [RegExp, string])[] = [
  [/(?<=\b[Ff])oot$/, "eet"],
  [/(?<=\b[Tt])ooth$/, "eeth"],
  [/(?<=\b(?:[Hh]al|[Ss]hel|[Ll]ea))f$/, "ves"],
  [/(?<=\b[Kk]ni)fe$/, "ves"],
];

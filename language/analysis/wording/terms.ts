// Words that an approved term replaces, found in all their regular forms, and the approved word in the form that fits.
import type { Term } from "#model/declarations.ts";
import { type Form, inForm, nounForms, verbForms } from "./inflection.ts";
import { isBaseForm } from "./verbs.ts";

export interface ReplacedWord {
  readonly term: Term;
  /** As written, and the approved word in the same form. */
  readonly text: string;
  readonly approved: string;
  /** Offsets in the text. */
  readonly start: number;
  readonly end: number;
  /** The article before it that does not fit the approved word. */
  readonly article: { readonly start: number; readonly end: number; readonly text: string } | null;
}

/** Finds replaced words in a text; made once for the terms of a file or procedure. */
export type TermFinder = (text: string) => readonly ReplacedWord[];

/** @param verbs the shop's own, in small letters */
export function termFinder(terms: readonly Term[], verbs: ReadonlySet<string>): TermFinder {
  const forms = new Map<string, { term: Term; form: Form }>();
  const approved = new Set<string>();
  for (const term of terms) {
    for (const form of formsOf(term.approved.toLowerCase(), verbs).keys()) approved.add(form);
    for (const replaced of term.replaces)
      for (const [form, kind] of formsOf(replaced.trim().toLowerCase(), verbs))
        if (form !== "" && !forms.has(form)) forms.set(form, { term, form: kind });
  }
  if (forms.size === 0) return () => [];
  // An approved word that holds a replaced one goes first, and is left alone.
  const longestFirst = [...new Set([...approved, ...forms.keys()])].sort((a, b) => b.length - a.length);
  const pattern = new RegExp(`${BEFORE}(?:${longestFirst.map(asPattern).join("|")})${BEHIND}`, "giu");
  return (text) => {
    const quotes = quotedIn(text);
    return [...text.matchAll(pattern)].flatMap(({ 0: found, index }) => {
      const known = forms.get(found.toLowerCase().replaceAll("’", "'").replace(/\s+/g, " "));
      const end = index + found.length;
      if (known === undefined || quotes.some((quote) => quote.start < end && index < quote.end)) return [];
      const fitting = likeCase(found, inForm(known.term.approved, known.form));
      return [
        {
          term: known.term,
          text: found,
          approved: fitting,
          start: index,
          end,
          article: articleFor(text, index, fitting),
        },
      ];
    });
  };
}

// No part of a longer word, nor of one with a hyphen or a number, which may be a code.
const BEFORE = /(?<![\p{L}\p{N}\p{M}_])(?<![\p{L}\p{N}][-‐‑/.])/u.source;
const BEHIND = /(?![\p{L}\p{N}\p{M}_]|[-‐‑/.][\p{L}\p{N}])/u.source;

/** A noun has its plural and possessive; a word that a verb list holds has the forms of a verb beside them. */
function formsOf(word: string, verbs: ReadonlySet<string>): ReadonlyMap<string, Form> {
  const [first = ""] = word.split(" ");
  return isBaseForm(first, verbs) ? new Map([...nounForms(word), ...verbForms(word)]) : nounForms(word);
}

function asPattern(word: string): string {
  return word
    .replace(/[.*+?^${}()|[\]\\]/g, "\\$&")
    .replaceAll("'", "['’]")
    .replaceAll(" ", "\\s+");
}

/** What stands in quotes is called so somewhere else: a label, a code. */
function quotedIn(text: string): readonly { readonly start: number; readonly end: number }[] {
  return [...text.matchAll(/"[^"\n]*"|“[^”\n]*”|‘[^’\n]*’|(?<![\p{L}\p{N}])'[^'\n]*'(?![\p{L}\p{N}])/gu)].map(
    ({ 0: quote, index }) => ({
      start: index,
      end: index + quote.length,
    }),
  );
}

function likeCase(found: string, word: string): string {
  if (found.length > 1 && found === found.toUpperCase()) return word.toUpperCase();
  const first = found.charAt(0);
  return first === first.toLowerCase() ? word : word.charAt(0).toUpperCase() + word.slice(1);
}

function articleFor(text: string, start: number, word: string): ReplacedWord["article"] {
  const before = /(?<![\p{L}\p{N}])(an?)\s+$/iu.exec(text.slice(0, start));
  const article = before?.[1];
  if (before === null || article === undefined) return null;
  const wanted = /^[aeiou]/i.test(word) ? "an" : "a";
  if (article.toLowerCase() === wanted) return null;
  const fitting = article.charAt(0) === "A" ? wanted.charAt(0).toUpperCase() + wanted.slice(1) : wanted;
  return { start: before.index, end: before.index + article.length, text: fitting };
}

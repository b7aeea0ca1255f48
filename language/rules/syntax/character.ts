// syntax.character: characters that no part of the language uses.
import { rule } from "../rule.ts";

export const character = rule({
  code: "syntax.character",
  severity: "error",
  about: "character",
  page: {
    finds:
      "Characters that mean nothing outside a text or comment, one finding for a run of them. They are passed over.",
    why: "Word processors put in quotation marks and signs that look right and are read by nobody.",
    fails: "part Cover “bearing cover”\n",
    mended: 'part Cover "bearing cover"\n',
  },
  say: ({ character: found, instead }) => {
    const shown = visible(found);
    if (instead === null)
      return {
        message: `“${shown}” means nothing here.`,
        remedy: OTHERWISE[found] ?? "Take it out, or put it in quotation marks.",
      };
    if (instead === "")
      return {
        message: `No “${shown}” is needed here.`,
        why: "A statement ends where the next one begins.",
        remedy: "Take it out.",
      };
    if (instead.startsWith('"'))
      return { message: "A text stands in plain quotation marks.", remedy: `Write ${instead}.` };
    const word = instead.trim();
    return { message: `“${shown}” is written as “${word}”.`, remedy: `Write “${word}”.` };
  },
  fix: ({ span, instead }) => {
    if (instead === null) return [];
    const title = instead === "" ? "Take it out" : `Write ${instead.trim()}`;
    return [{ title, edits: [{ span, newText: /^[a-z]/.test(instead) ? ` ${instead} ` : instead }] }];
  },
});

const OTHERWISE: Readonly<Record<string, string>> = {
  "->": "Make each action a step of its own: “step …”.",
  "#": "A comment begins with “//”.",
  ...of("~≈≅∼", "Take it out, and give a range or a tolerance where one is meant: 38 .. 42 N·m."),
  ...of("ØØø⌀", "Take it out; “diameter” says it."),
};

function of(signs: string, remedy: string): Record<string, string> {
  return Object.fromEntries([...signs].map((sign) => [sign, remedy]));
}

/** At most a dozen characters, those without a shape by their number. */
function visible(text: string): string {
  const shown = [...text.slice(0, 12)].map((each) =>
    /[\p{L}\p{N}\p{P}\p{S}]/u.test(each)
      ? each
      : `U+${each.codePointAt(0)?.toString(16).toUpperCase().padStart(4, "0")}`,
  );
  return shown.join("") + (text.length > 12 ? "…" : "");
}

// syntax.reserved-word: a keyword used as a name where it cannot be one.
import { rule } from "../rule.ts";

export const reservedWord = rule({
  code: "syntax.reserved-word",
  severity: "error",
  about: "reserved word",
  page: {
    finds:
      "A word that begins statements of the language, used as a name. It is read as the name, so that nothing else is reported for it.",
    why: "If such a word could be a name, a half-written line would swallow the one behind it.",
    fails: 'part step "step of the ladder"\n',
    mended: 'part Step "step of the ladder"\n',
  },
  say: ({ begins, word, suggestion }) => ({
    message: `“${word}” is a word of the language and cannot be a name here.`,
    why: begins ? `A statement can begin with “${word}”.` : `The language says other things with “${word}”.`,
    remedy: `Call it “${suggestion}”, here and wherever it is named.`,
  }),
  fix: ({ span, suggestion }) => [{ title: `Call it “${suggestion}”`, edits: [{ span, newText: suggestion }] }],
});

// A rule's page as plain data, as lines of text and as Markdown: for `sprag explain`, the hover and the link of a code.
import type { Severity } from "./finding.ts";
import { RULES } from "./index.ts";
import { nearestCode } from "./nearest-code.ts";
import type { Page, Rule } from "./rule.ts";

export type Explanation =
  | { readonly known: true; readonly code: string; readonly severity: Severity; readonly page: Page }
  | { readonly known: false; readonly code: string; readonly nearest: string | null };

/** The page of a code; for one that no rule has, the nearest. */
export function explain(code: string): Explanation {
  const found = RULES.find((rule) => rule.code === code.trim());
  if (found !== undefined) return { known: true, code: found.code, severity: found.severity, page: found.page };
  return {
    known: false,
    code,
    nearest: nearestCode(
      code.trim(),
      RULES.map((rule) => rule.code),
    ),
  };
}

/** All codes with what they find in one sentence, in the order of the catalogue. */
export function allCodes(): readonly { readonly code: string; readonly severity: Severity; readonly finds: string }[] {
  return RULES.map(({ code, severity, page }) => ({ code, severity, finds: firstSentence(page.finds) }));
}

/** The page as text, wrapped at `width`. */
export function pageText({ code, severity, page }: Pick<Rule, "code" | "severity" | "page">, width = 78): string {
  const lines = [
    `${code} (${severity})`,
    "",
    ...wrapped(page.finds, width),
    "",
    "Why it matters",
    ...wrapped(page.why, width - 2).map(indented),
  ];
  for (const [title, text] of examples(page)) lines.push("", title, ...text.trimEnd().split("\n").map(indented));
  if (page.source !== undefined) lines.push("", "Source", ...wrapped(page.source, width - 2).map(indented));
  return `${lines.map((line) => line.trimEnd()).join("\n")}\n`;
}

/** The page as Markdown. */
export function pageMarkdown({ code, severity, page }: Pick<Rule, "code" | "severity" | "page">): string {
  const parts = [`# ${code}`, `*${severity}*`, page.finds, `**Why it matters.** ${page.why}`];
  for (const [title, text] of examples(page)) parts.push(`**${title}**`, `\`\`\`sprag\n${text.trimEnd()}\n\`\`\``);
  if (page.source !== undefined) parts.push(`**Source.** ${page.source}`);
  return `${parts.join("\n\n")}\n`;
}

/** All pages as one Markdown document, with a list by family before them: `language/RULES.md`. */
export function referenceMarkdown(): string {
  const families = [...new Set(RULES.map(familyOf))];
  const lists = families.map((family) => {
    const rows = RULES.filter((rule) => familyOf(rule) === family).map(
      ({ code, severity, page }) =>
        `| [${code}](#${code.replace(".", "")}) | ${severity} | ${firstSentence(page.finds)} |`,
    );
    return `## ${family}\n\n| code | severity | what it finds |\n|---|---|---|\n${rows.join("\n")}`;
  });
  const pages = RULES.map((rule) => pageMarkdown(rule).trimEnd());
  return `${[REFERENCE_HEAD, ...lists, ...pages].join("\n\n")}\n`;
}

const REFERENCE_HEAD = `<!-- Made from the pages of the rules; not to be edited. tests/rules/explain.test.ts holds it to them. -->

The rules of Sprag: what each finds, why it matters, an example that has it, the same made right, and where it is from. \`sprag explain CODE\`
prints one page.`;

function familyOf({ code }: Pick<Rule, "code">): string {
  return code.slice(0, code.indexOf("."));
}

function examples(page: Page): readonly (readonly [title: string, text: string])[] {
  const others = Object.entries(page.files ?? {}).map(([path, text]) => [`Beside it, ${path}`, text] as const);
  return [["This has it", page.fails], ["Made right", page.mended], ...others];
}

function firstSentence(text: string): string {
  return /^.*?[.:](?=\s|$)/.exec(text)?.[0].replace(/:$/, ".") ?? text;
}

function indented(line: string): string {
  return `  ${line}`;
}

function wrapped(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    if (line !== "" && line.length + word.length + 1 > width) {
      lines.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  return [...lines, line];
}

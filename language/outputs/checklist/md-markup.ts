// Text, tables and quotes of GitHub-flavoured Markdown, so that no text becomes markup. Knows no document.

/** A text that stands for itself, in one line: nothing in it is read as Markdown or HTML. */
export function inline(text: string): string {
  return (
    text
      .replace(/[\s\u0085\u2028\u2029]+/g, " ")
      .trim()
      .replaceAll("&", "&amp;")
      .replaceAll("<", "&lt;")
      .replaceAll(">", "&gt;")
      .replace(/[\\`*_[\]|~$#]/g, "\\$&")
      .replace(/:(?=\/\/)|(?<=www)\./gi, "\\$&")
      // An address or a name after it would become a link.
      .replaceAll("@", "@<!-- -->")
      .replace(/^(\d+)([.)])(?=\s|$)/, "$1\\$2")
      .replace(/^[+\-=:]/, "\\$&")
  );
}

/** A link to a place in the same file; `id` holds letters, digits, `_` and `-` only. */
export function linkTo(id: string, text: string): string {
  return `[${inline(text)}](#${id})`;
}

/** A table of texts. */
export function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.map(inline).join(" | ")} |`;
  return [line(heads), `|${heads.map(() => " --- |").join("")}`, ...rows.map(line)].join("\n");
}

/** Parts of Markdown in a block quote. */
export function quoted(parts: readonly string[]): string {
  return paragraphs(parts)
    .split("\n")
    .map((line) => (line === "" ? ">" : `> ${line}`))
    .join("\n");
}

/** Parts of Markdown one after the other, each a block of its own. */
export function paragraphs(parts: readonly string[]): string {
  return parts.join("\n\n");
}

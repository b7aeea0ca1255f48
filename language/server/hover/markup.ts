// Markdown of a hover. Whatever a writer wrote stands for itself: nothing in it is read as markup. Knows no content.

/** A text of the writer's in one line. */
export function plain(text: string): string {
  return text
    .replace(/[\s\u0085\u2028\u2029]+/g, " ")
    .trim()
    .replace(/[\\`*_[\]{}()|~$#<>&!]/g, "\\$&")
    .replaceAll("@", "&#64;")
    .replace(/:(?=\/\/)|(?<=www)\./gi, "\\$&");
}

/** A title, or the part of a sentence that counts. */
export function strong(text: string): string {
  const words = plain(text);
  return words === "" ? "" : `**${words}**`;
}

/** Parts one below the other; empty ones are left out. */
export function blocks(parts: readonly (string | null)[]): string {
  return parts.filter((part) => part !== null && part !== "").join("\n\n");
}

/** Lines of one list. */
export function list(lines: readonly string[]): string {
  return lines.map((line) => `- ${line}`).join("\n");
}

/** The same for a client that takes no Markdown. */
export function withoutMarkup(markdown: string): string {
  return markdown
    .replace(/^```(?:text)?(?:\n|$)/gm, "")
    .replace(/\*\*((?:\\.|[^*\\])+)\*\*/g, "$1")
    .replaceAll("&#64;", "@")
    .replace(/\\([!-/:-@[-`{-~])/g, "$1");
}

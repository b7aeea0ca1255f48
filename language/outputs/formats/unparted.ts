// What may not be parted where a line ends. Knows no format.

/** A number stays with its unit, and a range in one piece: no-break spaces take the place of spaces. */
export function unparted(text: string): string {
  return text.replace(/(?<=\d) (?=[^\s\d]{1,9}(?:\s|$))| (?=(?:\.\.|±|–) )|(?<= (?:\.\.|±|–)) /g, "\u00a0");
}

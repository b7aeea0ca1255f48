// Text as XML may hold it. Knows no document.

/** A file of XML, without the characters that no XML may hold, escaped or not (XML 1.0, production 2); each is shown as missing. */
export function legalXml(file: string): string {
  return file.replace(ILLEGAL, "\uFFFD");
}

// Half a pair of surrogates is no character.
const ILLEGAL =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
  /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;

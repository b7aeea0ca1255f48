// Units as a shop reads them, where the language writes the country behind the unit so that it is one word. Knows no quantity.

/** A text with quantities in it, as `14 flozUS`, in the spelling of the trade: `14 US fl oz`. */
export function unitNames(text: string): string {
  return text.replace(SPELT, (spelt) => NAMES[spelt] ?? spelt);
}

/** NIST SP 811 (2008), appendix B.8: gal, qt, pt and fl oz, each said to be of the US or imperial; ton, short and long (memory). */
const NAMES: Readonly<Record<string, string>> = {
  galUS: "US gal",
  qtUS: "US qt",
  ptUS: "US pt",
  flozUS: "US fl oz",
  galUK: "imp gal",
  qtUK: "imp qt",
  ptUK: "imp pt",
  flozUK: "imp fl oz",
  tonUS: "short ton",
  tonUK: "long ton",
};

const SPELT = /(?<![\p{L}\p{N}])(?:(?:gal|qt|pt|floz)U[SK]|tonU[SK])(?![\p{L}\p{N}])/gu;

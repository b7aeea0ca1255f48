// Reads the elements of an SVG file: names, attributes and text, nothing else of XML. What it does not understand it gives up on, so
// that nothing is drawn otherwise than it is meant. Knows no shape.

export interface SvgElement {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly (SvgElement | string)[];
}

interface Open {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: (SvgElement | string)[];
}

/** The root; null where the text is not well-formed, or declares entities of its own. */
export function readSvg(text: string): SvgElement | null {
  const root: Open = { name: "", attributes: new Map(), children: [] };
  const open: Open[] = [root];
  let at = 0;
  const plain = text.replace(/^\uFEFF/, "");
  for (const found of plain.matchAll(TOKEN)) {
    if (found.index !== at) return null;
    at += found[0].length;
    const [whole, closed, opened, attributes = "", empty] = found;
    const parent = open.at(-1) as Open;
    if (closed !== undefined) {
      if (open.length < 2 || parent.name !== closed) return null;
      open.pop();
    } else if (opened !== undefined) {
      const read = attributesIn(attributes);
      if (read === null || open.length > DEEPEST) return null;
      const element: Open = { name: opened, attributes: read, children: [] };
      parent.children.push(element);
      if (empty === "") open.push(element);
    } else if (!whole.startsWith("<")) {
      const said = decoded(whole);
      if (said === null) return null;
      parent.children.push(said);
    }
  }
  const elements = root.children.filter((child) => typeof child !== "string");
  const [first] = elements;
  const isWhole = at === plain.length && open.length === 1 && elements.length === 1;
  return isWhole && first?.name === "svg" ? first : null;
}

const DEEPEST = 40;

/** A comment, an instruction, a document type without declarations; an end, a start; text. */
const TOKEN =
  /<!--[\s\S]*?-->|<\?[\s\S]*?\?>|<!DOCTYPE[^>[]*>|<\/([\w:.-]+)\s*>|<([\w:.-]+)((?:\s+[\w:.-]+\s*=\s*(?:"[^"<]*"|'[^'<]*'))*)\s*(\/?)>|[^<]+/g;

function attributesIn(text: string): ReadonlyMap<string, string> | null {
  const found = new Map<string, string>();
  for (const [, name = "", double, single = ""] of text.matchAll(/([\w:.-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g)) {
    const value = decoded(double ?? single);
    if (value === null) return null;
    found.set(name, value);
  }
  return found;
}

const ENTITIES: ReadonlyMap<string, string> = new Map([
  ["lt", "<"],
  ["gt", ">"],
  ["amp", "&"],
  ["quot", '"'],
  ["apos", "'"],
]);

function decoded(text: string): string | null {
  let isKnown = true;
  const plain = text.replace(
    /&(?:#(\d{1,7})|#x([\da-f]{1,6})|(\w*));?/gi,
    (_, decimal?: string, hex?: string, name?: string) => {
      const code = decimal === undefined ? Number.parseInt(hex ?? "", 16) : Number(decimal);
      const sign =
        name === undefined ? (code <= 0x10ffff ? String.fromCodePoint(code) : undefined) : ENTITIES.get(name);
      isKnown &&= sign !== undefined;
      return sign ?? "";
    },
  );
  return isKnown ? plain : null;
}

// Reads HTML back as strictly as a browser could take it: every tag closed in its place, every attribute quoted. Written
// apart from the writer, to show that text in it stays text.

export interface Element {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly (Element | string)[];
}

const EMPTY = new Set(["meta", "input", "br", "path", "img"]);
/** What is in them is no markup, up to the first that looks like their end. */
const RAW = new Set(["style", "script"]);

/** The root element. Throws where the markup is not well formed. */
export function readHtml(html: string): Element {
  const body = html.replace(/^<!doctype html>\s*/, "");
  const root: { children: (Element | string)[]; name: string } = { name: "", children: [] };
  const open = [root];
  let at = 0;
  while (at < body.length) {
    const here = open[open.length - 1] as typeof root;
    const next = body.indexOf("<", at);
    const end = next === -1 ? body.length : next;
    if (end > at) here.children.push(decoded(body.slice(at, end)));
    if (next === -1) break;
    const closing = /^<\/([a-z][a-z0-9]*)>/.exec(body.slice(next));
    if (closing !== null) {
      if (here.name !== closing[1]) throw new Error(`</${closing[1]}> closes <${here.name}>`);
      open.pop();
      at = next + closing[0].length;
      continue;
    }
    const opening = /^<([a-z][a-z0-9]*)((?:\s+[a-z][a-z-]*(?:="[^"<]*")?)*)\s*(\/?)>/i.exec(body.slice(next));
    if (opening === null) throw new Error(`no tag: ${body.slice(next, next + 60)}`);
    const [whole, name = "", written = "", slash] = opening;
    const element = { name, attributes: attributesOf(written), children: [] as (Element | string)[] };
    here.children.push(element);
    at = next + whole.length;
    if (RAW.has(name)) {
      const close = body.toLowerCase().indexOf(`</${name}`, at);
      element.children.push(body.slice(at, close));
      at = close + `</${name}>`.length;
    } else if (slash === "" && !EMPTY.has(name)) open.push(element);
  }
  if (open.length !== 1) throw new Error(`<${open[open.length - 1]?.name}> is not closed`);
  const [element] = root.children;
  if (element === undefined || typeof element === "string") throw new Error("no element");
  return element;
}

export function* elementsIn(element: Element): Generator<Element> {
  yield element;
  for (const child of element.children) if (typeof child !== "string") yield* elementsIn(child);
}

/** All text in it, styles and scripts left out. */
export function textOf(element: Element): string {
  if (RAW.has(element.name)) return "";
  return element.children.map((child) => (typeof child === "string" ? child : textOf(child))).join("");
}

export function textsIn(element: Element): readonly string[] {
  if (RAW.has(element.name)) return [];
  return element.children.flatMap((child) => (typeof child === "string" ? [child] : textsIn(child)));
}

function attributesOf(text: string): ReadonlyMap<string, string> {
  const all = [...text.matchAll(/([a-z][a-z-]*)(?:="([^"]*)")?/gi)];
  return new Map(all.map(([, name = "", value = ""]) => [name, decoded(value)]));
}

const NAMED: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', "#39": "'" };

function decoded(text: string): string {
  return text.replace(/&([a-z]+|#39);/g, (whole, name: string) => {
    const character = NAMED[name];
    if (character === undefined) throw new Error(`no such entity: ${whole}`);
    return character;
  });
}

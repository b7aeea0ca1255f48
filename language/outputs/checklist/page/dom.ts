// Making and finding elements of the page. Text goes in as text, never as markup.

/** An element with attributes and what is in it. */
export function make<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  attributes: Readonly<Record<string, string>>,
  ...inside: readonly (Node | string)[]
): HTMLElementTagNameMap[Name] {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  element.append(...inside);
  return element;
}

export function button(text: string, press: () => void, look = ""): HTMLButtonElement {
  const made = make("button", { type: "button", class: look }, text);
  made.addEventListener("click", press);
  return made;
}

/** A text field with its label before it. */
export function entry(label: string, aside: string, attributes: Readonly<Record<string, string>> = {}) {
  const input = make("input", { type: "text", autocomplete: "off", ...attributes });
  const hidden = make("span", { class: "aside" }, aside);
  return { label: make("label", { class: "entry" }, make("span", {}, hidden, label), input), input };
}

export function all<Kind extends Element>(selector: string, within: ParentNode = document): readonly Kind[] {
  return [...within.querySelectorAll<Kind>(selector)];
}

/** The ids of entries that an element speaks of. */
export function idsIn(element: Element, attribute: "data-ask" | "data-rounds" | "data-failing"): readonly string[] {
  return JSON.parse(element.getAttribute(attribute) ?? "[]") as readonly string[];
}

/** The entry that an element is to mark. */
export function idOf(element: Element): string {
  return element.getAttribute("data-of") ?? "";
}

/** A fixed text with its names filled in. */
export function fill(text: string, values: Readonly<Record<string, string | number>>): string {
  return text.replace(/\{(\w+)\}/g, (whole, name: string) =>
    Object.hasOwn(values, name) ? String(values[name]) : whole,
  );
}

/** A time of an event as people read it, in the time of the place. */
export function timeText(at: string): string {
  const time = new Date(at);
  return `${time.getFullYear()}-${two(time.getMonth() + 1)}-${two(time.getDate())} ${two(time.getHours())}:${two(time.getMinutes())}`;
}

/** So many seconds after a time, to the second, in the time of the place. */
export function clockText(at: string, seconds: number): string {
  const time = new Date(Date.parse(at) + seconds * 1000);
  return [time.getHours(), time.getMinutes(), time.getSeconds()].map(two).join(":");
}

function two(number: number): string {
  return String(number).padStart(2, "0");
}

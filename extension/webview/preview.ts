// The page of the preview: shows an output that it is given, keeps its place when another comes, and tells which row was chosen.
// Text of a procedure gets in as markup of the output alone: scripts are taken out, and the page's policy runs none.
import { type FromPage, type Kept, kept, type Shown, type ToPage, toPage } from "../client/preview/messages.ts";
import { createBar } from "./bar.ts";
import { merge } from "./merge.ts";
import { sheetStyle } from "./style.ts";

declare function acquireVsCodeApi(): {
  postMessage(message: FromPage): void;
  getState(): unknown;
  setState(state: Kept): void;
};

const editor = acquireVsCodeApi();
const sheet = document.getElementById("preview-sheet") as HTMLElement;
const bar = createBar(document.getElementById("preview-bar") as HTMLElement, (message) => editor.postMessage(message));
const outputStyle = new CSSStyleSheet();
const ownStyle = new CSSStyleSheet();
ownStyle.replaceSync(sheetStyle);
document.adoptedStyleSheets = [outputStyle, ownStyle];

let shown: Shown | undefined;
let styleText = "";
let outputClasses: readonly string[] = [];
let here = "";
let before = keptBefore();

addEventListener("message", ({ data }: MessageEvent<unknown>) => {
  if (!toPage(data)) return;
  if (data.kind === "content") show(data);
  else if (data.kind === "figure") showFigure(data);
  else if (data.kind === "standing") {
    const place = placeNow();
    bar.say(data.words);
    sheet.classList.toggle("stale", data.stale);
    putBack(place);
  } else follow(data.id);
});

sheet.addEventListener("click", (event) => {
  if (!(event.target instanceof Element) || getSelection()?.isCollapsed === false) return;
  const link = event.target.closest("a[href^='#']");
  if (link !== null) {
    event.preventDefault();
    bringIntoView(rowOf(decodeURIComponent(link.getAttribute("href")?.slice(1) ?? "")));
  } else choose(event.target);
});

sheet.addEventListener("keydown", (event) => {
  if (event.key !== "Enter" || !(event.target instanceof Element) || !event.target.matches(ROW)) return;
  event.preventDefault();
  choose(event.target);
});

let saving = 0;
addEventListener("scroll", () => {
  clearTimeout(saving);
  saving = setTimeout(keep, 100);
});

new MutationObserver(takeTheme).observe(document.body, {
  attributes: true,
  attributeFilter: ["data-vscode-theme-kind"],
});
takeTheme();
editor.postMessage({ kind: "ready" });

/** A step of a page, or a box of a picture. */
const ROW = ".step[id], [data-step]";

function show(message: ToPage & { readonly kind: "content" }): void {
  const isOther = shown?.as !== message.shown.as || shown.uri !== message.shown.uri;
  const place = before ?? (isOther ? undefined : placeNow());
  shown = message.shown;
  bar.show(message);
  const next = parsed(message);
  if (next.style !== styleText) outputStyle.replaceSync(next.style);
  styleText = next.style;
  sheet.lang = next.language;
  document.body.classList.remove(...outputClasses);
  outputClasses = next.classes;
  document.body.classList.add(...outputClasses);
  merge(sheet, next.content);
  markHere();
  if (place !== undefined && place.row !== "") putBack(place);
  else if (isOther) scrollTo(0, 0);
  before = undefined;
  keep();
}

/** By the source that stands for it. */
const figures = new Map<string, string>();

function showFigure({ src, data }: ToPage & { readonly kind: "figure" }): void {
  figures.set(src, data);
  for (const image of sheet.querySelectorAll("img")) if (image.dataset.figure === src) image.src = data;
}

/** Outputs that can be light and dark are as the editor is. */
function takeTheme(): void {
  const kind = document.body.dataset.vscodeThemeKind ?? "";
  document.documentElement.dataset.theme = /dark|contrast$/.test(kind) ? "dark" : "light";
}

interface Parsed {
  readonly style: string;
  readonly language: string;
  /** Of the page as a whole. */
  readonly classes: readonly string[];
  readonly content: HTMLElement;
}

/** The output's own markup, without what could act, each row one that the keyboard reaches. */
function parsed({ content, form }: ToPage & { readonly kind: "content" }): Parsed {
  const page = new DOMParser().parseFromString(content, "text/html");
  for (const one of page.querySelectorAll("script, link, meta, base, iframe, object, embed")) one.remove();
  const style = [...page.querySelectorAll("style")];
  for (const one of style) one.remove();
  for (const one of page.querySelectorAll("*"))
    for (const { name, value } of [...one.attributes]) {
      if (name.startsWith("on")) one.removeAttribute(name);
      // The page's policy refuses what markup says of style; set from here it is taken.
      else if (name === "style" && one instanceof HTMLElement) one.style.cssText = value;
      else if (name === "style" && one instanceof SVGElement) one.style.cssText = value;
    }
  for (const image of page.querySelectorAll("img")) {
    const src = image.getAttribute("src") ?? "";
    image.dataset.figure = src;
    // Until the picture has come, its words stand there.
    const data = figures.get(src);
    if (data === undefined) image.removeAttribute("src");
    else image.src = data;
  }
  for (const one of page.querySelectorAll("input, select, textarea, button")) one.setAttribute("disabled", "");
  for (const one of page.querySelectorAll(ROW)) one.setAttribute("tabindex", "0");
  // A picture is one thing to a screen reader; with links in it, it is not.
  for (const one of page.querySelectorAll("svg:has([data-step])")) one.setAttribute("role", "group");
  for (const one of page.querySelectorAll("[data-step]")) one.setAttribute("role", "link");
  const made = document.createElement("div");
  made.append(...page.body.childNodes);
  const language = page.documentElement.lang || "en";
  return {
    style: style.map(({ textContent }) => textContent).join("\n"),
    language,
    classes: form === "svg" ? ["picture"] : [...page.body.classList],
    content: made,
  };
}

function follow(id: string): void {
  here = id;
  markHere();
  bringIntoView(rowOf(id));
}

function markHere(): void {
  for (const one of sheet.querySelectorAll(".at-cursor")) one.classList.remove("at-cursor");
  rowOf(here)?.classList.add("at-cursor");
}

/** Moves nothing where enough of it is on the screen. */
function bringIntoView(row: Element | null): void {
  if (row === null) return;
  const { top, bottom, height, left, right, width } = row.getBoundingClientRect();
  const [from, to] = [bar.height(), innerHeight];
  const seen = Math.min(bottom, to) - Math.max(top, from);
  const seenAcross = Math.min(right, innerWidth) - Math.max(left, 0);
  if (seen >= Math.min(height, ENOUGH) && seenAcross >= Math.min(width, ENOUGH)) return;
  scrollBy({
    top: top - from - (to - from) / 4,
    left: seenAcross < ENOUGH ? left - innerWidth / 4 : 0,
    behavior: "instant",
  });
}

/** In pixels: two lines or so. */
const ENOUGH = 48;

function choose(inside: Element): void {
  const row = inside.closest(ROW) ?? inside.closest(".task")?.querySelector(ROW);
  const id = row?.getAttribute("data-step") ?? row?.id;
  if (id !== undefined) editor.postMessage({ kind: "row", id });
}

function rowOf(id: string): Element | null {
  if (id === "") return null;
  const name = CSS.escape(id);
  return sheet.querySelector(`[data-step="${name}"], [id="${name}"]`);
}

// ---- the place on the screen

type Place = Pick<Kept, "row" | "below">;

/** The first row on the screen. It mostly stands above what is being written, and so has the same number afterwards. */
function placeNow(): Place {
  const top = bar.height();
  const row = [...sheet.querySelectorAll(ROW)].find((one) => {
    const { bottom, top: start } = one.getBoundingClientRect();
    return bottom > top && start < innerHeight;
  });
  if (row === undefined || scrollY === 0) return { row: "", below: 0 };
  return { row: row.getAttribute("data-step") ?? row.id, below: row.getBoundingClientRect().top };
}

/** On the screen it does not move either where the bar has grown, as while half a line is written. */
function putBack({ row, below }: Place): void {
  const found = rowOf(row);
  if (found !== null) scrollBy({ top: found.getBoundingClientRect().top - below, behavior: "instant" });
}

function keep(): void {
  if (shown !== undefined) editor.setState({ shown, ...placeNow() });
}

function keptBefore(): Place | undefined {
  const state = editor.getState();
  return kept(state) ? state : undefined;
}

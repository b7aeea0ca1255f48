// The bar at the foot of the page: how far the work is, what comes next, undo; and the record as a file and on paper.
import { readRecord, recordText } from "../../record/read-record.ts";
import { emptyFilling, type Filling } from "../../record/reduce.ts";
import { all, button, fill, idOf, make } from "./dom.ts";
import { get, put, recordOf, replay } from "./keep.ts";
import type { Page, Show } from "./page.ts";
import { refusalText } from "./refusals.ts";

export function bar(page: Page): Show {
  const { words } = page;
  const place = document.getElementById("bar");
  if (place === null) return () => {};
  const progress = make("span", { class: "progress" });
  const undo = button(words.undo, () => {
    if (page.act({ kind: "undo" })) page.say(words.undone);
  });
  const main = button(
    words.showNext,
    () => {
      if (page.filling().position.isComplete) save(page);
      else showNext(page.filling(), true);
    },
    "main",
  );
  const more = make(
    "details",
    { class: "more" },
    make("summary", {}, words.more),
    make("div", {}, ...moreButtons(page)),
  );
  more.addEventListener("click", ({ target }) => {
    if (target instanceof HTMLButtonElement && !target.classList.contains("asks")) more.open = false;
  });
  place.append(main, undo, more, progress);
  place.setAttribute("role", "region");
  place.setAttribute("aria-label", words.bar);
  place.hidden = false;
  document.body.classList.add("filling");
  return (filling) => {
    const { position, earlier } = filling;
    undo.disabled = earlier.length === 0;
    main.textContent = position.isComplete ? words.save : words.showNext;
    progress.textContent =
      position.stopped !== null
        ? words.stopped
        : position.isComplete
          ? words.complete
          : fill(words.progress, counts(page, filling));
  };
}

/** Of what is still on the way. */
export function counts({ plan }: Page, { marks, position }: Filling): { readonly done: number; readonly all: number } {
  const ids = plan.program.flatMap((op) => (op.op === "mark" ? [op.of] : []));
  const onTheWay = ids.filter((id) => !position.leftOut.has(id));
  return { done: onTheWay.filter((id) => marks.has(id) && !position.next.includes(id)).length, all: onTheWay.length };
}

/** Brings what comes next onto the screen, with the warnings ahead of it; the keyboard too where that was asked for. */
export function showNext({ position, marks }: Filling, takeFocus: boolean): void {
  const [next] = position.next;
  const own = all<HTMLElement>("[data-of]").filter((one) => idOf(one) === next);
  const asking = all<HTMLElement>(".choices.is-next").find((one) => !one.hidden);
  const place = own.at(-1) ?? asking;
  if (place === undefined) return;
  const step = place.closest(".guarded") ?? place.closest(".step") ?? place;
  const isBegun = all("[data-of]", step).some((one) => marks.has(idOf(one)));
  const isTall = step.getBoundingClientRect().height > innerHeight * 0.7;
  const shown = isTall && isBegun ? (place.closest(".hold, .round, .field") ?? place) : step;
  const calm = matchMedia("(prefers-reduced-motion: reduce)").matches;
  shown.scrollIntoView({ block: isTall && !isBegun ? "start" : "center", behavior: calm ? "auto" : "smooth" });
  if (!takeFocus) return;
  const target = place.matches("input, button")
    ? place
    : place.querySelector<HTMLElement>("input:not([hidden]), button:not([hidden])");
  target?.focus({ preventScroll: true });
}

function moreButtons(page: Page): readonly HTMLElement[] {
  const { words } = page;
  const file = make("input", { type: "file", accept: ".json,application/json", hidden: "", "aria-label": words.open });
  file.addEventListener("change", () => {
    const [chosen] = file.files ?? [];
    void chosen?.text().then((text) => page.say(openedText(page, text)));
    file.value = "";
  });
  let isSure = false;
  const again = button(
    words.startAgain,
    () => {
      if (isSure) {
        page.replace(emptyFilling(page.plan));
        page.say(words.startedAgain);
      }
      isSure = !isSure;
      again.textContent = isSure ? words.startAgainSure : words.startAgain;
    },
    "asks",
  );
  return [
    button(words.save, () => save(page)),
    button(words.open, () => file.click()),
    file,
    button(words.print, () => print()),
    button(words.theme, switchTheme),
    again,
  ];
}

function save(page: Page): void {
  const { plan, words } = page;
  const name = `${`${plan.document} ${plan.procedure}`.replace(/[^\p{L}\p{N}._-]+/gu, "-")}-record.json`;
  const url = URL.createObjectURL(new Blob([recordText(recordOf(plan, page.filling()))], { type: "application/json" }));
  make("a", { href: url, download: name }).click();
  URL.revokeObjectURL(url);
  page.say(fill(words.saved, { file: name }));
}

/** Opens it where it fits, and says so; else why not. */
function openedText(page: Page, text: string): string {
  const { plan, words } = page;
  const read = readRecord(text);
  if (!read.ok) return words.openedNoRecord;
  const { record } = read;
  if (record.hash !== plan.hash || record.procedure !== plan.procedure)
    return fill(words.openedOther, { hash: record.hash.slice(0, 12) });
  const { filling, fault } = replay(plan, record);
  if (fault !== null)
    return fill(words.openedFaulty, { entry: fault.event + 1, why: refusalText(page, fault.refusal) });
  page.replace(filling);
  return fill(words.opened, counts(page, filling));
}

const THEME = "sprag theme";

/** The look that was chosen here before. */
export function restoreTheme(): void {
  const theme = get(THEME);
  if (theme === "dark" || theme === "light") document.documentElement.dataset.theme = theme;
}

function switchTheme(): void {
  const root = document.documentElement;
  const isDark =
    root.dataset.theme === undefined
      ? matchMedia("(prefers-color-scheme: dark)").matches
      : root.dataset.theme === "dark";
  const theme = isDark ? "light" : "dark";
  root.dataset.theme = theme;
  put(THEME, theme);
}

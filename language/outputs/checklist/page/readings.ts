// Fields for readings: what is typed is held against its limits at once, in either unit, and recorded by a button.
import { amountNow, readTyped, shownIn } from "../../record/amount.ts";
import type { Entry, ReadingEntry, UnitChoice } from "../../record/plan.ts";
import { entryOf, type Filling, readingOf, readingsIn } from "../../record/reduce.ts";
import { unitNames } from "../../unit-names.ts";
import { all, button, fill, idOf, make, timeText } from "./dom.ts";
import type { Page, Show } from "./page.ts";

export function readings(page: Page): Show {
  const shows = all<HTMLInputElement>('input[type="text"][data-of]').flatMap((input) => {
    const entry = entryOf(page.plan, idOf(input));
    return entry?.kind === "reading" ? [reading(page, input, entry)] : [];
  });
  return (filling) => {
    for (const show of shows) show(filling);
  };
}

function reading(page: Page, input: HTMLInputElement, entry: Entry & ReadingEntry): Show {
  const { words } = page;
  const { id, units } = entry;
  let unit = units[0] ?? null;
  const told = make("output", { class: "told", "aria-live": "polite" });
  const earlier = make("p", { class: "earlier" });
  const take = (): void => {
    const { value: text } = input;
    const read = readingOf(page.plan, page.filling(), entry, { text, unit: unit?.text ?? "" });
    if ("why" in read) page.say(unreadText(page, entry, text));
    else page.act({ kind: "read", of: id, text, unit: unit?.text ?? "", passed: read.passed });
  };
  const record = button(words.record, take, "main");
  const chooser = unitButtons(units, words.unit, (chosen) => {
    unit = chosen;
    judge(page.filling());
  });
  const tools = make("div", { class: "reading" }, ...(units.length > 1 ? [chooser.group] : []), record, told);
  input.closest("label")?.after(tools, earlier);
  if (units.length > 0) input.setAttribute("inputmode", "decimal");
  const judge = (filling: Filling): void => {
    const { text, passed } = judgedText(page, filling, entry, input.value, unit);
    told.textContent = text;
    told.classList.toggle("bad", passed === false);
    record.textContent = passed === false ? words.recordFailed : words.record;
    chooser.show(unit);
  };
  input.addEventListener("input", () => judge(page.filling()));
  input.addEventListener("keydown", (event) => {
    if (event.key !== "Enter") return;
    event.preventDefault();
    take();
  });
  let shownText: string | null = null;
  return (filling) => {
    const mark = filling.marks.get(id);
    const isOpen = mark === undefined || filling.position.next.includes(id);
    input.readOnly = !isOpen;
    input.closest("label")?.classList.toggle("is-next", filling.position.next.includes(id));
    record.hidden = !isOpen;
    chooser.group.hidden = !isOpen;
    const text = mark?.text ?? null;
    // What somebody is typing stays; a recorded reading that is taken back goes.
    if (text !== shownText) input.value = text ?? "";
    shownText = text;
    earlier.textContent = earlierText(page, filling, id);
    if (mark === undefined) {
      judge(filling);
      return;
    }
    told.classList.toggle("bad", mark.passed === false);
    const judged = mark.passed === null ? null : mark.passed ? words.within : words.outside;
    const values = { value: mark.text, time: timeText(mark.at) };
    const recorded = judged === null ? fill(words.recordedText, values) : fill(words.recorded, { ...values, judged });
    told.textContent = isOpen ? `${recorded}. ${words.stopAndAsk}` : recorded;
  };
}

interface Judged {
  readonly text: string;
  readonly passed: boolean | null;
}

/** What a reading would come to if it were recorded now. */
function judgedText(page: Page, filling: Filling, entry: ReadingEntry, text: string, unit: UnitChoice | null): Judged {
  const { words, plan } = page;
  const now = readingsIn(plan, filling.marks);
  const isOpen = [entry.limits?.low, entry.limits?.high].some((end) => end != null && amountNow(end, now) === null);
  if (text.trim() === "" || unit === null) return { text: isOpen ? words.limitsOpen : "", passed: null };
  const read = readingOf(plan, filling, entry, { text, unit: unit.text });
  if ("why" in read) return { text: unreadText(page, entry, text), passed: null };
  const judged =
    read.passed === null ? (isOpen ? words.limitsOpen : words.noLimits) : read.passed ? words.within : words.outside;
  return {
    text: `${fill(words.understood, { value: valueText(page, entry, text, unit) })}: ${judged}`,
    passed: read.passed,
  };
}

/** Why nothing can be read from a text: another unit stands behind its number, or it is none. */
function unreadText({ words }: Page, { units }: ReadingEntry, text: string): string {
  const [, unit] = /^[^\p{L}%\u00b0'"]*\d\s*([\p{L}%\u00b0'"].*)$/u.exec(text.trim()) ?? [];
  const known = units.map((one) => one.text).filter((one) => one !== "");
  if (unit === undefined || known.length === 0) return words.noNumber;
  return fill(words.otherUnit, { unit: unit.slice(0, 12), units: known.join(", ") });
}

/** The value as it was understood, and in the other unit. */
function valueText({ words }: Page, { units }: ReadingEntry, text: string, unit: UnitChoice): string {
  const typed = readTyped(text, unit, units);
  if (typed === null) return text;
  const other = units.find((one) => one.text !== typed.unit.text);
  // A digit more than the limits have, so that a reading does not look rounded onto one.
  const finer = other && { ...other, digit: other.digit - 1 };
  return finer === undefined
    ? typed.shown
    : fill(words.alsoIn, { value: typed.shown, other: shownIn(typed.base, finer, "nearest") });
}

/** Readings out of limits that were taken here before. */
function earlierText({ words }: Page, { events, marks }: Filling, id: string): string {
  const now = marks.get(id)?.at;
  return events
    .flatMap((event) =>
      event.kind === "read" && event.of === id && event.passed === false && event.at !== now
        ? [fill(words.failedBefore, { text: `${event.text} ${event.unit}`.trim(), time: timeText(event.at) })]
        : [],
    )
    .join("; ");
}

function unitButtons(units: readonly UnitChoice[], name: string, choose: (unit: UnitChoice) => void) {
  const buttons = units.map((unit) => ({ unit, made: button(unitNames(unit.text), () => choose(unit), "unit") }));
  const group = make("div", { class: "units", role: "group", "aria-label": name }, ...buttons.map(({ made }) => made));
  const show = (chosen: UnitChoice | null): void => {
    for (const { unit, made } of buttons) made.setAttribute("aria-pressed", String(unit === chosen));
  };
  return { group, show };
}

// Times that run: timers that a fitter starts, and deadlines that begin by themselves when a step is done. They run by the clock and the
// times of the record, so that they go on over a reload. Each second changes only what is seen; who listens is told when a time begins
// and when it is over.
import type { Deadline, Timer } from "../../record/plan.ts";
import { type Filling, mayStart } from "../../record/reduce.ts";
import { type Bounds, boundsOf, durationText, endOf, keptOf, secondsBetween } from "../../record/times.ts";
import { all, button, clockText, fill, idOf, make } from "./dom.ts";
import type { Page, Show } from "./page.ts";

/** What a timer or deadline says now. */
interface Told {
  readonly text: string;
  /** Said aloud when it comes to it. */
  readonly news?: string;
  /** Whether its time is missed. */
  readonly late?: true;
  /** Whether it stands in the bar too. */
  readonly runs?: true;
}

interface Row {
  readonly step: string;
  readonly tell: (filling: Filling, now: string) => Told | null;
  readonly show: (filling: Filling, told: Told | null) => void;
}

export function timers(page: Page): Show {
  const { plan } = page;
  const homes = homesOf();
  const rows = [
    ...plan.timers.map((timer) => timerRow(page, timer, homes)),
    ...plan.deadlines.map((deadline) => deadlineRow(page, deadline, homes)),
  ];
  const strip = make("p", { class: "running" });
  document.getElementById("bar")?.prepend(strip);
  /** The news of each row; none are told of a record that was there before. */
  let known: readonly (string | undefined)[] | null = null;
  let next: number | undefined;
  const look = (filling: Filling): void => {
    const now = new Date().toISOString();
    const told = rows.map((row) => row.tell(filling, now));
    for (const [at, row] of rows.entries()) row.show(filling, told[at] ?? null);
    const news = told.map((one) => one?.news);
    for (const [at, one] of news.entries()) if (one !== undefined && known !== null && known[at] !== one) page.say(one);
    known = news;
    const running = told.flatMap((one, at) =>
      one?.runs === true ? [make("span", { class: one.late ? "bad" : "" }, `${rows[at]?.step}: ${one.text}`)] : [],
    );
    strip.hidden = running.length === 0;
    strip.replaceChildren(...running);
    // What is said last stands above the bar.
    document.body.style.setProperty("--running", `${strip.offsetHeight}px`);
    clearTimeout(next);
    if (running.length > 0) next = setTimeout(() => look(page.filling()), 1000);
  };
  return look;
}

/** Finds the row of the page that holds some entries. */
type Homes = (entries: readonly string[], rows: ".step" | ".instruction") => Element | null;

function homesOf(): Homes {
  const byId = new Map<string, Element[]>();
  for (const place of all("[data-of]")) byId.set(idOf(place), [...(byId.get(idOf(place)) ?? []), place]);
  return (entries, rows) => {
    const places = entries.flatMap((id) => byId.get(id) ?? []);
    let home = places[0]?.closest(rows) ?? null;
    // A procedure that is performed inside has steps of its own.
    while (home !== null && !places.every((place) => home?.contains(place)))
      home = home.parentElement?.closest(rows) ?? null;
    return home;
  };
}

function timerRow(page: Page, timer: Timer, homes: Homes): Row {
  const { words, plan } = page;
  const { id, step, of, entries } = timer;
  const press = button("", () => {
    const time = spanText(page, boundsOf(plan, page.filling(), timer));
    if (page.act({ kind: "start", of: id })) page.say(fill(words.timerStarted, { step, time }));
  });
  const { row, show } = textRow(press);
  if (of === "takes") underTerms(homes(entries, ".step"), row);
  else homes(entries, ".instruction")?.append(row);
  return {
    step,
    tell: (filling, now) => timerTold(page, timer, filling, now),
    show: (filling, told) => {
      const isOpen = mayStart(filling, timer);
      press.hidden = !isOpen;
      press.textContent =
        told === null
          ? fill(words.startTimer, { time: spanText(page, boundsOf(plan, filling, timer)) })
          : words.startTimerAgain;
      show(told);
      row.hidden = told === null && !isOpen;
    },
  };
}

function timerTold(page: Page, timer: Timer, filling: Filling, now: string): Told | null {
  const { words, plan } = page;
  const { id, step, of, entries } = timer;
  const from = filling.started.get(id);
  if (from === undefined) return null;
  const { low, high } = boundsOf(plan, filling, timer);
  const end = of === "cure" ? null : endOf(filling, entries);
  if (end !== null) {
    const time = durationText(secondsBetween(from, end));
    const isEarly = of === "wait" && low !== null && secondsBetween(from, end) < low;
    if (!isEarly) return { text: fill(words.timerTook, { time }) };
    const text = fill(words.timerEarly, { time, least: durationText(low) });
    return { text, late: true, news: text };
  }
  const passed = secondsBetween(from, now);
  const least = low ?? high ?? 0;
  if (passed < least) return { text: fill(words.timeLeft, { left: leftText(least - passed) }), runs: true };
  const news = fill(words.timerOver, { step });
  if (high !== null && passed < high) {
    const text = fill(words.timeBetween, { least: durationText(least), left: leftText(high - passed) });
    return { text, news, runs: true };
  }
  const isBeyond = high !== null && high > least;
  const over = fill(isBeyond ? words.timeBeyond : words.timeOver, { time: clockText(from, high ?? least) });
  return { text: over, news: isBeyond ? `${step}: ${over}` : news, ...(of === "cure" ? {} : { runs: true as const }) };
}

function deadlineRow(page: Page, deadline: Deadline, homes: Homes): Row {
  const { row, show } = textRow();
  underTerms(homes(deadline.entries, ".step"), row);
  return {
    step: deadline.step,
    tell: (filling, now) => deadlineTold(page, deadline, filling, now),
    show: (_, told) => {
      show(told);
      row.hidden = told === null;
    },
  };
}

function deadlineTold({ words, plan }: Page, deadline: Deadline, filling: Filling, now: string): Told | null {
  const kept = keptOf(plan, filling, deadline);
  if (kept === null) return null;
  const { step, after } = deadline;
  const { from, taken } = kept;
  const most = durationText(kept.most);
  if (taken !== null && taken <= kept.most)
    return { text: fill(words.deadlineKept, { time: durationText(Math.ceil(taken)), after }) };
  if (taken !== null) {
    const text = fill(words.deadlineLate, { time: durationText(Math.ceil(taken)), after, most });
    return { text, late: true, news: `${step}: ${text}` };
  }
  const left = kept.most - secondsBetween(from, now);
  if (left >= 0)
    return {
      text: fill(words.deadline, { most, after, left: leftText(left) }),
      news: fill(words.deadlineStarts, { step, most }),
      runs: true,
    };
  const text = fill(words.deadlineMissed, { most, after, time: clockText(from, kept.most) });
  return { text, late: true, news: `${step}: ${text}`, runs: true };
}

/** A row with a text that changes; screen readers leave a timer alone until they are asked. */
function textRow(...before: readonly HTMLElement[]) {
  const text = make("span", { class: "told", role: "timer" });
  const row = make("div", { class: "timer" }, ...before, text);
  const show = (told: Told | null): void => {
    text.textContent = told?.text ?? "";
    text.classList.toggle("bad", told?.late === true);
  };
  return { row, show };
}

/** Below what the step says of its times. */
function underTerms(step: Element | null, row: HTMLElement): void {
  step?.querySelector(":scope > .body > .term")?.after(row);
}

/** Rounded up, so that what is over stands there as no second left. */
function leftText(seconds: number): string {
  return durationText(Math.ceil(seconds));
}

function spanText({ words }: Page, { low, high }: Bounds): string {
  const [least, most] = [low, high].map((end) => (end === null ? null : durationText(end)));
  if (least == null) return most == null ? "" : fill(words.atMost, { value: most });
  if (most == null) return fill(words.atLeast, { value: least });
  return least === most ? least : fill(words.range, { low: least, high: most });
}

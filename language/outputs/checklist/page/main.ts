// The checklist filled in: one state, changed by events alone, and parts that show it. All rules are the record's own.

import type { RecordEvent } from "../../record/record.ts";
import { emptyFilling, entryOf, type Filling, reduce } from "../../record/reduce.ts";
import { bar, counts, restoreTheme, showNext } from "./bar.ts";
import { arms, failing, options } from "./branches.ts";
import { circles } from "./circles.ts";
import { fill, timeText } from "./dom.ts";
import { keep, kept, keyOf } from "./keep.ts";
import type { Page, PageData, Show } from "./page.ts";
import { people, signs } from "./people.ts";
import { readings } from "./readings.ts";
import { refusalText } from "./refusals.ts";
import { computed, steps } from "./steps.ts";
import { ticks } from "./ticks.ts";
import { timers } from "./timers.ts";

function start(data: PageData): void {
  const { plan, words } = data;
  let filling = emptyFilling(plan);
  let isKept = true;
  const shows: Show[] = [];
  const show = (): void => {
    for (const one of shows) one(filling);
  };
  const say = (text: string): void => {
    const place = document.getElementById("say");
    if (place !== null) place.textContent = text;
  };
  const change = (next: Filling): void => {
    const before = filling.position.next[0];
    filling = next;
    const wasKept = isKept;
    isKept = keep(plan, filling);
    show();
    if (filling.position.next[0] !== before) showNext(filling, false);
    if (wasKept && !isKept) say(words.notKept);
  };
  const page: Page = {
    ...data,
    filling: () => filling,
    say,
    replace: change,
    act: (action) => {
      say("");
      const outcome = reduce(plan, filling, { ...action, at: new Date().toISOString() } as RecordEvent);
      if (!outcome.ok) {
        say(refusalText(data, outcome.refusal));
        if (outcome.refusal.why === "no name" && action.kind !== "sign")
          document.querySelector<HTMLElement>("#people input")?.focus();
        return false;
      }
      change(outcome.filling);
      tellAgain(data, filling, say);
      return true;
    },
  };
  restoreTheme();
  shows.push(
    people(page),
    options(page),
    ticks(page),
    readings(page),
    signs(page),
    arms(page),
    failing(),
    circles(page),
  );
  shows.push(computed(page), steps(page), bar(page), timers(page));
  const found = kept(plan);
  if (found !== null) filling = found.filling;
  show();
  const last = filling.events.at(-1);
  if (found?.fits === false) say(words.keptFaulty);
  else if (last !== undefined) say(fill(words.restored, { time: timeText(last.at), ...counts(page, filling) }));
  if (last !== undefined) showNext(filling, false);
  if (!keep(plan, filling)) say(words.notKept);
  addEventListener("storage", ({ key }) => {
    if (key !== keyOf(plan)) return;
    filling = kept(plan)?.filling ?? emptyFilling(plan);
    show();
    say(words.otherWindow);
  });
}

function tellAgain({ plan, words }: PageData, { again, position }: Filling, say: (text: string) => void): void {
  if (again.length === 0) return;
  const step = entryOf(plan, position.next[0] ?? "")?.step ?? "";
  say(fill(words.again, { step, count: again.length }));
}

const text = document.getElementById("data")?.textContent ?? "";
if (text !== "") start(JSON.parse(text) as PageData);

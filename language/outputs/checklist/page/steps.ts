// Which step is next, which are done, and which the way does not come by; what readings give for later instructions.

import type { Computed } from "../../document.ts";
import { amountNow, isWithin, shownIn } from "../../record/amount.ts";
import type { Amount, UnitChoice } from "../../record/plan.ts";
import { type Filling, isMarked, readingsIn } from "../../record/reduce.ts";
import { all, fill, idOf, make } from "./dom.ts";
import type { Page, Show } from "./page.ts";

export function steps(page: Page): Show {
  const { words } = page;
  const rows = all<HTMLElement>(".step, .arm, .failing").map((place) => ({
    place,
    ids: [...new Set(all("[data-of]", place).map(idOf))],
    note: place.classList.contains("step") ? noteIn(place) : null,
  }));
  return (filling) => {
    const { next, leftOut } = filling.position;
    for (const { place, ids, note } of rows) {
      const isNext = ids.some((id) => next.includes(id));
      const isLeftOut = ids.length > 0 && ids.every((id) => leftOut.has(id));
      const isFinished = !isNext && !isLeftOut && ids.every((id) => leftOut.has(id) || isMarked(filling, id));
      place.classList.toggle("is-next", isNext);
      place.classList.toggle("is-left-out", isLeftOut);
      place.classList.toggle("is-done", isFinished);
      if (isNext && place.classList.contains("step")) place.setAttribute("aria-current", "step");
      else place.removeAttribute("aria-current");
      if (note !== null)
        note.textContent = isNext ? words.next : isLeftOut ? words.leftOut : isFinished ? words.done : "";
    }
  };
}

function noteIn(place: HTMLElement): HTMLElement {
  const note = make("span", { class: "state" });
  place.querySelector("h3, h4, h5, h6")?.append(note);
  return note;
}

export function computed(page: Page): Show {
  const places = all<HTMLElement>("[data-computed]");
  return (filling) => {
    for (const place of places) {
      const values = page.computed[place.dataset.computed ?? ""] ?? [];
      place.textContent = values.flatMap((value) => computedText(page, filling, value) ?? []).join(" ");
    }
  };
}

function computedText({ plan, words }: Page, filling: Filling, value: Computed): string | null {
  const now = readingsIn(plan, filling.marks);
  if (value.kind === "choice") {
    const reading = now(value.reading);
    if (reading === null) return null;
    const rows = value.rows.filter(({ limits }) => limits !== null && isWithin(reading, limits, now) === true);
    const chosen = rows.length === 0 ? words.noRow : rows.map(({ text }) => text).join(" / ");
    return fill(words.fromReading, { value: chosen });
  }
  // With one end still open, the other alone would look like the whole of the limits.
  const ends = [value.low, value.nominal, value.high].filter((end) => end !== null);
  if (ends.some((end) => amountNow(end, now) === null)) return null;
  return fill(words.fromReadings, { value: value.units.map((unit) => bandText(value, unit, now, words)).join(" = ") });
}

type Band = Computed & { readonly kind: "value" };

/** A band is rounded inwards. */
function bandText(band: Band, unit: UnitChoice, now: ReturnType<typeof readingsIn>, words: Page["words"]): string {
  const shown = (end: Amount | null, side: "up" | "down" | "nearest"): string | null => {
    const value = end === null ? null : amountNow(end, now);
    // A digit more than what it is worked out from, so that rounding inwards takes nothing away that counts.
    return value === null ? null : shownIn(value, { ...unit, digit: unit.digit - 1 }, side);
  };
  const [low, high] = [shown(band.low, "up"), shown(band.high, "down")];
  if (low !== null && high !== null) return fill(words.range, { low, high });
  if (low !== null) return fill(words.atLeast, { value: low });
  return high === null ? (shown(band.nominal, "nearest") ?? "") : fill(words.atMost, { value: high });
}

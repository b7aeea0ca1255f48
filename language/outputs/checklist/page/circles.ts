// Drawings of places that are gone round: which is next, and which are done in this round.
import { entryOf, type Filling } from "../../record/reduce.ts";
import { all, button, fill, idsIn, make } from "./dom.ts";
import type { Page, Show } from "./page.ts";

export function circles(page: Page): Show {
  const shows = all<HTMLElement>(".round[data-rounds]").map((place) => circle(page, place));
  return (filling) => {
    for (const show of shows) show(filling);
  };
}

function circle(page: Page, place: HTMLElement): Show {
  const { words, plan } = page;
  const ids = idsIn(place, "data-rounds").filter((id) => entryOf(plan, id)?.kind === "round");
  const marks = new Map(all<SVGElement>("[data-place]", place).map((mark) => [Number(mark.dataset.place), mark]));
  let now: { readonly id: string; readonly next: number } | null = null;
  const go = (): void => {
    if (now !== null) page.act({ kind: "place", of: now.id });
  };
  const press = button("", go, "main");
  const told = make("span", { class: "told" });
  place.append(make("div", { class: "choices" }, press, told));
  for (const [position, mark] of marks)
    mark.addEventListener("click", () => {
      if (now?.next === position) go();
    });
  return (filling) => {
    const id = ids.find((one) => filling.position.next.includes(one)) ?? null;
    const places = placesOf(page, id ?? ids[0] ?? "");
    const done = doneIn(filling, ids, id, places.length);
    const next = id === null ? undefined : places[done];
    now = id === null || next === undefined ? null : { id, next };
    for (const [position, mark] of marks) {
      mark.classList.toggle("turn", position === next);
      mark.classList.toggle("turned", places.slice(0, done).includes(position));
    }
    press.hidden = now === null;
    told.hidden = now === null;
    press.textContent = fill(words.placeDone, { place: next ?? "" });
    const round = ids.length > 1 && id !== null ? `${fill(words.roundValue, { round: ids.indexOf(id) + 1 })}: ` : "";
    told.textContent = round + fill(words.placesDone, { done, all: places.length });
  };
}

function placesOf({ plan }: Page, id: string): readonly number[] {
  const entry = entryOf(plan, id);
  return entry?.kind === "round" ? entry.places : [];
}

/** Of the round in hand; all of them once the last round is done. */
function doneIn({ marks }: Filling, ids: readonly string[], id: string | null, all: number): number {
  if (id !== null) return marks.get(id)?.places ?? 0;
  return ids.every((one) => marks.has(one)) ? all : 0;
}

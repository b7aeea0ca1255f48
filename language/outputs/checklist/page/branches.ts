// Ways that the work may take: options decided before the start, conditions that a person has to judge, what to do if a check fails.
import { all, button, fill, idOf, idsIn, make } from "./dom.ts";
import type { Page, Show } from "./page.ts";

export function options(page: Page): Show {
  const places = all<HTMLElement>(".option[data-of]");
  for (const place of places)
    for (const choice of all<HTMLButtonElement>("[data-choice]", place))
      choice.addEventListener("click", () => {
        const chosen = page.act({ kind: "choose", of: idOf(place), choice: choice.dataset.choice ?? "" });
        const option = place.querySelector(".text")?.textContent ?? "";
        if (chosen) page.say(fill(page.words.chosen, { option, choice: choice.textContent ?? "" }));
      });
  return ({ marks, position }) => {
    for (const place of places) {
      const chosen = marks.get(idOf(place))?.text;
      place.classList.toggle("is-next", position.next.includes(idOf(place)));
      for (const choice of all<HTMLButtonElement>("[data-choice]", place))
        choice.setAttribute("aria-pressed", String(choice.dataset.choice === chosen));
    }
  };
}

/** Asks whether the condition of an arm holds, where nothing recorded says so. */
export function arms(page: Page): Show {
  const { words } = page;
  const shows = all<HTMLElement>(".arm[data-ask]").map((arm): Show => {
    const ids = idsIn(arm, "data-ask");
    let asked: string | undefined;
    const answer = (holds: boolean) => () => {
      if (asked !== undefined) page.act({ kind: "answer", of: asked, holds });
    };
    const asking = make(
      "div",
      { class: "choices is-next", role: "group", "aria-label": words.askArm },
      make("span", { class: "if" }, words.askArm),
      button(words.holds, answer(true)),
      button(words.holdsNot, answer(false)),
    );
    arm.querySelector(".if")?.after(asking);
    return ({ position }) => {
      asked = ids.find((id) => position.next.includes(id));
      asking.hidden = asked === undefined;
    };
  });
  return (filling) => {
    for (const show of shows) show(filling);
  };
}

/** What is to be done if a check fails: set back until it has. */
export function failing(): Show {
  const places = all<HTMLElement>(".failing[data-failing]");
  return ({ marks }) => {
    for (const place of places) {
      place.classList.toggle(
        "is-open",
        idsIn(place, "data-failing").some((id) => marks.get(id)?.passed === false),
      );
    }
  };
}

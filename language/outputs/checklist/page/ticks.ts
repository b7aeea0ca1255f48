// Boxes to tick, and the two buttons of a check without a value.
import { entryOf, isMarked, whyNotNow } from "../../record/reduce.ts";
import { all, button, fill, idOf, make, timeText } from "./dom.ts";
import type { Page, Show } from "./page.ts";
import { refusalText } from "./refusals.ts";

export function ticks(page: Page): Show {
  const boxes = all<HTMLInputElement>('input[type="checkbox"][data-of]');
  const shows = boxes.flatMap((box) =>
    entryOf(page.plan, idOf(box))?.kind === "judgement" ? [judgement(page, box)] : [],
  );
  for (const box of boxes) box.addEventListener("change", () => ticked(page, box));
  return (filling) => {
    for (const box of boxes) {
      const id = idOf(box);
      const label = box.closest("label");
      box.checked = isMarked(filling, id);
      label?.classList.toggle("is-next", filling.position.next.includes(id));
      label?.classList.toggle("is-bad", filling.marks.get(id)?.passed === false);
      label?.classList.toggle("is-left-out", filling.position.leftOut.has(id));
    }
    for (const show of shows) show(filling);
  };
}

function ticked(page: Page, box: HTMLInputElement): void {
  const { words } = page;
  const id = idOf(box);
  const isTicked = box.checked;
  box.checked = isMarked(page.filling(), id);
  const kind = entryOf(page.plan, id)?.kind;
  const refusal = whyNotNow(page.filling(), id);
  if (!isTicked) page.say(words.alreadyDone);
  else if (refusal !== null) page.say(refusalText(page, refusal));
  else if (kind === "judgement") page.say(words.useButtons);
  else if (kind !== "reading") page.act({ kind: "tick", of: id });
  else {
    page.say(words.useField);
    all<HTMLElement>('input[type="text"][data-of]')
      .find((one) => idOf(one) === id)
      ?.focus();
  }
}

function judgement(page: Page, box: HTMLInputElement): Show {
  const { words } = page;
  const of = idOf(box);
  const judge = (passed: boolean) => () => page.act({ kind: "judge", of, passed });
  const buttons = make(
    "div",
    { class: "choices" },
    button(words.inOrder, judge(true)),
    button(words.notInOrder, judge(false)),
  );
  const told = make("p", { class: "told" });
  box.closest("label")?.after(buttons, told);
  return ({ marks, position }) => {
    const mark = marks.get(of);
    buttons.hidden = !position.next.includes(of);
    told.hidden = mark === undefined;
    told.classList.toggle("bad", mark?.passed === false);
    told.textContent =
      mark === undefined
        ? ""
        : fill(mark.passed === true ? words.judgedInOrder : words.judgedNot, { time: timeText(mark.at) });
  };
}

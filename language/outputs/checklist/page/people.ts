// Names: of who does the work, asked once, and of who signs.
import type { PlanRole } from "../../record/plan.ts";
import { entryOf, personText } from "../../record/reduce.ts";
import { all, button, entry, fill, idOf, make, timeText } from "./dom.ts";
import type { Page, Show } from "./page.ts";

/** The place where those who do the work are named, ahead of it. */
export function people(page: Page): Show {
  const { words, plan } = page;
  const place = document.getElementById("people");
  const performing = plan.roles.filter(({ inspects }) => !inspects);
  if (place === null || performing.length === 0) return () => {};
  const rows = performing.map((role) => nameRow(page, role));
  const title = make("p", { class: "if" }, words.people);
  place.append(title, make("p", { class: "source" }, words.peopleWhy), ...rows.map(({ row }) => row));
  return (filling) => {
    for (const { show } of rows) show(filling);
    place.classList.toggle(
      "is-next",
      performing.every(({ role }) => !filling.people.has(role)),
    );
  };
}

function nameRow(page: Page, { role, title: own }: PlanRole): { readonly row: HTMLElement; readonly show: Show } {
  const { words } = page;
  const title = own === "" ? words.people : own;
  const name = entry(words.name, `${title}: `);
  const badge = entry(words.badge, `${title}: `);
  const take = button(words.takeName, () => {
    const taken = page.act({ kind: "name", role, name: name.input.value, badge: badge.input.value });
    if (taken)
      page.say(
        fill(words.nameTaken, {
          role: title,
          person: personText({ name: name.input.value, badge: badge.input.value }),
        }),
      );
  });
  const row = make(
    "div",
    { class: "sign person" },
    make("span", { class: "role" }, title),
    name.label,
    badge.label,
    take,
  );
  let shown = "";
  return {
    row,
    show: ({ people: known }) => {
      const person = known.get(role) ?? { name: "", badge: "" };
      // Only a change that came from elsewhere replaces what stands in the fields.
      if (personText(person) === shown) return;
      shown = personText(person);
      name.input.value = person.name;
      badge.input.value = person.badge;
    },
  };
}

/** Sign-offs and hold points. */
export function signs(page: Page): Show {
  const shows = all<HTMLElement>(".sign[data-of]").flatMap((place) => {
    const found = entryOf(page.plan, idOf(place));
    return found?.kind === "sign" ? [sign(page, place, found.id, found.role, found.step)] : [];
  });
  return (filling) => {
    for (const show of shows) show(filling);
  };
}

function sign(page: Page, place: HTMLElement, id: string, role: string, step: string): Show {
  const { words, plan } = page;
  const title = plan.roles.find((one) => one.role === role)?.title ?? role;
  for (const blank of all(".entry:not(.pen)", place)) blank.remove();
  const pen = all<HTMLElement>(".pen", place);
  const name = entry(words.name, `${step}, ${title}: `);
  const badge = entry(words.badge, `${step}, ${title}: `);
  badge.label.classList.add("typed");
  const press = button(
    fill(words.sign, { role: title }),
    () => page.act({ kind: "sign", of: id, name: name.input.value, badge: badge.input.value }),
    "main",
  );
  const told = make("p", { class: "told" });
  place.append(name.label, badge.label, ...pen, press, told);
  return (filling) => {
    const mark = filling.marks.get(id);
    for (const one of [name.label, badge.label, ...pen, press]) one.hidden = mark !== undefined;
    told.hidden = mark === undefined;
    if (mark !== undefined) told.textContent = fill(words.signed, { person: mark.text, time: timeText(mark.at) });
    const isNext = filling.position.next.includes(id);
    place.classList.toggle("is-next", isNext);
    const person = filling.people.get(role);
    if (mark === undefined && person !== undefined && name.input.value === "") {
      name.input.value = person.name;
      badge.input.value = person.badge;
    }
  };
}

// The bar of the preview: what is shown, and in which way; the export of what is shown. It stands in a tree of its own, so that
// the output's style and its own do not meet.
import type { FromPage, Shown, ToPage } from "../client/preview/messages.ts";
import { barStyle } from "./style.ts";

export interface Bar {
  readonly show: (message: ToPage & { readonly kind: "content" }) => void;
  /** A word about how what is shown stands to the text; empty for none. */
  readonly say: (words: string) => void;
  readonly height: () => number;
}

export function createBar(host: HTMLElement, send: (message: FromPage) => void): Bar {
  const root = host.attachShadow({ mode: "open" });
  const style = new CSSStyleSheet();
  style.replaceSync(barStyle);
  root.adoptedStyleSheets = [style];
  root.append((document.getElementById("bar-content") as HTMLTemplateElement).content.cloneNode(true));
  const select = (name: string): HTMLSelectElement => root.querySelector(`select[name="${name}"]`) as HTMLSelectElement;
  const [as, procedure, units, repeats] = ["as", "procedure", "units", "repeats"].map(select) as [
    HTMLSelectElement,
    HTMLSelectElement,
    HTMLSelectElement,
    HTMLSelectElement,
  ];
  const details = root.querySelector("details") as HTMLDetailsElement;
  const options = root.getElementById("options") as HTMLElement;
  const status = root.querySelector("[role=status]") as HTMLElement;

  root.addEventListener("change", () => {
    const chosen = [...options.querySelectorAll("select")].filter(({ value }) => value !== "");
    send({
      kind: "choose",
      as: as.value,
      procedure: procedure.value,
      units: units.value as Shown["units"],
      repeats: repeats.value as Shown["repeats"],
      set: Object.fromEntries(chosen.map(({ name, value }) => [name, value])),
    });
  });
  root.getElementById("export")?.addEventListener("click", () => send({ kind: "export" }));

  return {
    show: ({ shown, outputs, procedures, options: asked }) => {
      fill(as, outputs, shown.as);
      fill(procedure, procedures, shown.procedure);
      label(procedure).hidden = procedures.length < 2;
      units.value = shown.units;
      repeats.value = shown.repeats;
      details.hidden = asked.length === 0;
      const open = { name: "", title: options.dataset.open ?? "" };
      const selects = asked.map(({ name, title, choices }) => {
        const one = document.createElement("select");
        one.name = name;
        fill(one, [open, ...choices.map((choice) => ({ name: choice, title: choice }))], shown.set[name] ?? "");
        const around = document.createElement("label");
        around.append(`${title || name} `, one);
        return around;
      });
      // While nothing changed, what the reader has under the hand stays.
      const next = document.createElement("div");
      next.append(...selects);
      if (options.innerHTML !== next.innerHTML) options.replaceChildren(...selects);
      for (const one of options.querySelectorAll("select")) one.value = shown.set[one.name] ?? "";
    },
    say: (words) => {
      if (status.textContent !== words) status.textContent = words;
      status.hidden = words === "";
    },
    height: () => host.getBoundingClientRect().height,
  };
}

function label(select: HTMLSelectElement): HTMLElement {
  return select.parentElement as HTMLElement;
}

function fill(
  select: HTMLSelectElement,
  choices: readonly { readonly name: string; readonly title: string }[],
  chosen: string,
): void {
  const same = [...select.options].map(({ value, text }) => [value, text]);
  const wanted = choices.map(({ name, title }) => [name, title || name]);
  if (JSON.stringify(same) !== JSON.stringify(wanted))
    select.replaceChildren(...wanted.map(([value, text]) => new Option(text, value)));
  select.value = chosen;
}

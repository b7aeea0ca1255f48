// No fixed word of an output stands outside the catalogue: with every word of it put into another script, and a text that
// has no Latin letters, no Latin word is left in what is printed.
import { describe, expect, test } from "vitest";
import { en, type Words } from "#outputs/words/en.ts";
import { readHtml, textsIn } from "./html-reader.ts";
import { make, write } from "./make.ts";

/** The same catalogue with its words in letters of another script; what is filled in stays. */
const strange = estrange(en) as Words;

const TEXT = `
source Кни "руководство" revision "9"
role Сле "слесарь"
role Кон "контролёр"
ring Кру "круг" { count 4 numbered clockwise seen from "верх" position 1 at 12 o'clock }
part Осн "основа" { mass 21 kg  sharp  thread "7"  class "8.8" }
part Кры "крышка" { needs Осн }
part Бол[1..4] "болт" { seats in Кру by number }
temporary part Шты "штырь"
tool Клю "ключ" { torque 8 .. 60 N·m  accuracy 4 % of full scale  arm 400 mm  offset 50 mm  angle 90°  lifts 9 kg  each leg lifts 9 kg }
tool Щуп "щуп" { measures 0.03 .. 1 mm  resolution 0.01 mm  heats to 99 °C  cools to 9 °C  force 9 N }
consumable Мас "масло" { expands 9 }
energy Сет "сеть"
hazard Пыл "пыль"
option Объ "объём" { Пол "полный" Час "частичный" }
option Да "сохранено" { yes no }
fact Под "подписано"
procedure Дел "дело" {
  document "7" revision "8" dated 2026-05-04
  applies to "9" serial 1 .. 2
  applies to "9" serial 1
  based on Кни revision "9"
  per Кни "1"
  ambient 15 .. 25 °C
  room 9 m³
  crew 2
  begin with Сет is isolated, Осн is removed, not Под
  finish with Осн is installed, no temporary parts, Кры is at most 40 °C or Под
  danger burn, Пыл "горячо" avoid "беречься" wear "перчатки"
  warning lifting "тяжело"
  caution damage "хрупко"
  note "смотри"
  task "дело" {
    step Раз "раз" {
      install new Осн with Клю + Щуп
      install Шты on Осн at 6 o'clock
      lift Осн by hand reach 300 mm from height 600 mm to 900 mm turned 9°
      lift Осн with Клю on 2 legs at 60°
      set down Осн
      support Осн with Клю
      heat Осн to 30 .. 40 °C with Щуп
      heat Осн by 9 K
      cool Осн to 1 .. 2 °C
      cool Осн by 9 K
      press Кры over Осн
      press Кры in Осн
      remove Шты
      discard Шты
      tighten Бол[all] in cross pattern to 9 N·m, 10 N·m then 90° to seat with Клю
      tighten Бол[all] in circular pattern by hand
      tighten Бол[all] in order to 9 N·m
      loosen Бол[all] in reverse order
      loosen Бол[1] by 1/4 turn
      wait 9 s
      wait until Осн is at most 40 °C
      clean Осн with Мас
      lubricate Осн with Мас
      apply 5 g of Мас to Осн cure 9 s
      fill Осн with Мас
      drain Осн into Клю
      bleed Осн
      turn Кру[3] to 6 o'clock
      align Осн with Кры mark "метка"
      isolate Сет
      release Сет
      prove Сет dead
      restore Сет
      inspect Осн
      inspect Осн "трещины"
      do "крути" with Клю
      measure Заз "зазор" with Щуп expect 0.2 .. 0.9 mm record
      choose Осн by Заз { 0.2 .. 0.6 mm: 0.5 mm }
      check "зазор" with Щуп expect at most Заз - 0.05 mm record if it fails { return to Раз }
      repeat н from 1 to 2 { inspect Бол[н], Бол[н + 1] }
    }
    repeat н from 1 to 2 { step Два { install Бол[н] record "число" 1 .. 2 mm with Щуп sign Сле hold for Кон } }
    when Объ is Пол and not (Объ is Час or Да is yes) { step "два" } otherwise when Да is no { step "три" } otherwise { go to Конец }
    when Заз at most 0.6 mm { stop "стоп" }
    in any order { step "а" step "б" }
    perform Иное
    step Конец {
      needs Осн is not installed, Кру[1] at 6 o'clock
      do "крути"
      critical
      by Сле
      after Раз
      before Раз
      within 9 s after Раз
      takes 9 s
      figure "1" "рисунок"
      allow order.unfinished because "так надо" by "Он"
    }
  }
}
procedure Иное "иное" { step "иное" }
`;

/** Signs of units, and codes and severities of findings, which are no words of an output. */
const NO_WORDS =
  /\b(?:N·m|lbf·ft|lbf·in|mm|in|kg|lb|oz|ft|N|g|K|s|turn|at most|at least|o'clock|lbf|main\.sprag)\b|°[CF]|[a-z]+\.[a-z]+(?:-[a-z]+)*/g;

describe.each([{}, { repeats: "full" }, { options: { Объ: "Пол", Да: "no" } }, { draft: true, units: "us" }] as const)(
  "%j",
  (wishes) => {
    const made = make(TEXT, wishes, strange);

    test("no Latin word is left in the document", () => {
      const { findings, ...head } = made.document.head;
      const left = printed({ ...made.document, head }).filter((text) => /[a-z]{2}/i.test(text.replace(NO_WORDS, "")));
      expect([...new Set(left)]).toEqual([]);
      expect(findings.length).toBeGreaterThan(0);
    });

    test("none is added by the formats", () => {
      // Findings come with words of their own.
      const { html, md } = write({ ...made.document, head: { ...made.document.head, findings: [] } }, strange);
      const texts = textsIn(readHtml(html));
      const lines = md.replaceAll(/<a id="[^"]*"><\/a>|\]\(#[^)]*\)|\\/g, "").split("\n");
      for (const all of [texts, lines]) {
        expect(all.length).toBeGreaterThan(100);
        expect(all.filter((text) => /[a-z]{2}/i.test(text.replace(NO_WORDS, "")))).toEqual([]);
      }
    });
  },
);

test("every built-in hazard has its words", () => {
  // The list of the language (its description, "Safety statements").
  const people =
    "burn cold fire explosion pressure electric lifting crush cutting rotating spring fall dropped eye skin fumes noise";
  const equipment = "damage contamination overheating overtorque debris";
  expect(Object.keys(en.hazards).sort()).toEqual(`${people} ${equipment}`.split(" ").sort());
  for (const words of Object.values(en.hazards)) expect(words).toMatch(/^[a-z ]+$/);
});

/** Keys whose values are for programs: never printed. */
const UNPRINTED = new Set([
  "kind",
  "signal",
  "signals",
  "sense",
  "id",
  "link",
  "name",
  "error",
  "use",
  "ids",
  "computed",
  "record",
]);

function printed(value: unknown): readonly string[] {
  if (typeof value === "string") return [value];
  if (Array.isArray(value)) return value.flatMap(printed);
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => (UNPRINTED.has(key) ? [] : printed(inner)));
}

function estrange(value: unknown): unknown {
  if (typeof value === "string") return foreign(value);
  if (typeof value === "function") return (...given: readonly unknown[]) => estrangedCall(value as Say, given);
  if (Array.isArray(value)) return value.map(estrange);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [
      key,
      key === "language" || key === "direction" ? inner : estrange(inner),
    ]),
  );
}

type Say = (...given: readonly unknown[]) => string;

/** Calls it with stand-ins for what is filled in, so that only its own words change. */
function estrangedCall(say: Say, given: readonly unknown[]): string {
  const kept: string[] = [];
  const standIn = (value: unknown): unknown => {
    if (typeof value === "string" && value !== "") {
      kept.push(value);
      return String.fromCodePoint(0xe000 + kept.length - 1);
    }
    if (Array.isArray(value)) return value.map(standIn);
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, standIn(inner)]));
  };
  const said = foreign(say(...given.map(standIn)));
  return said.replace(/[\ue000-\uf8ff]/g, (mark) => kept[(mark.codePointAt(0) ?? 0) - 0xe000] ?? "");
}

function foreign(text: string): string {
  return text.replace(/[A-Za-z]/g, (letter) => String.fromCodePoint((letter.codePointAt(0) ?? 0) + 0x1d400));
}

// Values of options of the command: words from a list, `Option=Value`, dates. What does not fit is refused with the
// nearest word that would.
import { nearestNames } from "#syntax/edit-distance.ts";
import { Refusal } from "./refusal.ts";

export type Choices = Readonly<Record<string, string>>;

/** Reads one of these words, for commander. */
export function oneOf<Word extends string>(flag: string, words: readonly Word[]): (given: string) => Word {
  return (given) => {
    const found = words.find((word) => word === given);
    if (found !== undefined) return found;
    throw new Refusal(`${flag} cannot be “${given}”. ${nearestOf(given, words)}`);
  };
}

/** `Nearest: text.`, or all there are. */
export function nearestOf(given: string, words: readonly string[]): string {
  const nearest = nearestNames(given, words)[0];
  if (nearest !== undefined) return `Nearest: ${nearest}.`;
  return words.length === 0 ? "There is none." : `There ${words.length === 1 ? "is" : "are"}: ${words.join(", ")}.`;
}

/** Adds one `Option=Value` to those before it, for commander. */
export function addChoice(given: string, before: Choices | undefined): Choices {
  // As names in a file are read: an é is one letter, however it was typed.
  const [option = "", ...rest] = given
    .normalize("NFC")
    .split("=")
    .map((side) => side.trim());
  const value = rest.join("=");
  if (option === "" || value === "") {
    throw new Refusal(`--set takes Option=Value, such as Extent=Full; “${given}” is not so.`);
  }
  const known = before !== undefined && Object.hasOwn(before, option) ? before[option] : undefined;
  if (known !== undefined && known !== value) throw new Refusal(`--set gives ${option} twice: ${known} and ${value}.`);
  // `__proto__` is a name like any other here.
  return Object.defineProperty({ ...before }, option, { value, enumerable: true });
}

/** An option that files ask about, as far as a choice is held against it. */
interface Choosable {
  readonly name: string;
  readonly choices: readonly { readonly name: string }[];
}

/** Every option set has to be one that the files ask about, and its value one of its choices. @throws Refusal */
export function requireKnown(set: Choices | undefined, options: readonly Choosable[]): void {
  for (const [name, value] of Object.entries(set ?? {})) {
    const same = options.filter((option) => option.name === name);
    if (same.length === 0) {
      const names = [...new Set(options.map((option) => option.name))];
      throw new Refusal(`--set: no option is called ${name}. ${nearestOf(name, names)}`);
    }
    const values = [...new Set(same.flatMap((option) => option.choices.map((choice) => choice.name)))];
    if (!values.includes(value)) throw new Refusal(`--set: ${name} cannot be ${value}. ${nearestOf(value, values)}`);
  }
}

/** Whether {@link requireKnown} would let them pass. */
export function areKnown(set: Choices | undefined, options: readonly Choosable[]): boolean {
  return Object.entries(set ?? {}).every(([name, value]) =>
    options.some((option) => option.name === name && option.choices.some((choice) => choice.name === value)),
  );
}

/** A day of the calendar as YYYY-MM-DD, for commander. */
export function calendarDay(given: string): string {
  const day = new Date(`${given}T00:00:00Z`);
  const isDay = /^\d{4}-\d{2}-\d{2}$/.test(given) && !Number.isNaN(day.getTime());
  // 2026-02-30 is read as a day of March.
  if (isDay && day.toISOString().startsWith(given)) return given;
  throw new Refusal(`--on takes a date such as 2026-05-04; “${given}” is none.`);
}

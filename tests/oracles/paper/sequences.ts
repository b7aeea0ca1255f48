// Steps, one after the other, in few words: what themes are made of. Knows no meaning.
import { type PartAct, PLAIN_PART, type SimAct, type SimCondition, type SimLine, type SimPart } from "./shop.ts";

/** One step after the other. */
export type Sequence = readonly (SimAct | readonly SimLine[])[];

export const part = (name: string, says: Partial<SimPart> = {}): SimPart => ({ ...PLAIN_PART, name, ...says });
export const act = (verb: PartAct["verb"], of: string, more: Partial<PartAct> = {}): SimAct => ({
  verb,
  part: of,
  ...more,
});
export const done = (act: SimAct): SimLine => ({ kind: "act", act });
export const takes = (minutes: number): SimLine => ({ kind: "takes", low: minutes, high: minutes });
export const look: SimLine = done({ verb: "do" });
export const needs = (condition: SimCondition): readonly SimLine[] => [{ kind: "needs", condition }, look];
export const inAndOut = (...names: readonly string[]): SimAct[] =>
  names.flatMap((name) => [act("install", name), act("remove", name)]);
export const grips = (...names: readonly string[]): SimAct[] =>
  names.flatMap((name) => [act("tighten", name), act("loosen", name)]);

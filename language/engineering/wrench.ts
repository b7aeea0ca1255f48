// What a torque wrench is set to, with an adapter or without, and which settings keep the bolt inside its band.
// Exact but for the cosine of an adapter's angle. Knows no tool and no crib.
import type { Quantity } from "#quantity/quantity.ts";
import { add, cmp, div, isZero, mul, ONE, type Rational, rational, sub, ZERO } from "#quantity/rational.ts";
import { cosine } from "./cosine.ts";
import {
  difference,
  type Ends,
  type Given,
  type Input,
  input,
  limitOf,
  point,
  positive,
  product,
  quantityOf,
  quotient,
  readInput,
  readInputs,
  sum,
  termOf,
  unitBeside,
} from "./ends.ts";
import { type Computed, explained, type Outcome, refused, type Term } from "./explanation.ts";

/** An adapter between the drive and the bolt. */
export interface Adapter {
  /** From the centre of the drive to the centre of the bolt. */
  readonly offset: Given;
  /** Between the adapter and the line of the wrench's axis carried on; 90° changes nothing, 180° points back. Null: in line. */
  readonly angle: Given | null;
}

/** How a wrench stands to the bolt. */
export interface Reach {
  /** From the centre of the drive to the middle of the grip; null where it is not known. */
  readonly arm: Given | null;
  readonly adapters: readonly Adapter[];
}

/** How far a wrench may be off: a part of what it reads, or of its full scale, which is then given. */
export interface Accuracy {
  readonly share: Given;
  readonly fullScale: Given | null;
}

/**
 * The setting `Ts = (T + Tp) · L / (L + ΣE·cos α)`: T the torque asked for, Tp the prevailing (running) torque, L the arm,
 * E and α each adapter's offset and angle. Without an adapter, or with all of them at 90°, `Ts = T + Tp` for any arm.
 *
 * Source: the moment of the hand's force about drive and bolt; NAVEDTRA 14315, fig. 3-44 (read); prevailing torque added
 * as in AC 43.13-1B 7-40d (read). For one arm length only. Refused: no arm where it counts, and an adapter that points
 * back beyond the grip (L + ΣE·cos α not above zero). Bands are carried through end by end, so that a reading that lies
 * inside the result may still be outside for a wrench with accuracy: see {@link settingWindow}.
 */
export function wrenchSetting(
  asked: { readonly torque: Given; readonly prevailing: Given | null },
  reach: Reach,
): Computed {
  const wanted = wantedAt(asked.torque, asked.prevailing);
  const lever = leverOf(reach);
  if (!wanted.ok) return wanted;
  if (!lever.ok) return lever;
  const { torque, prevailing, terms } = wanted.value;
  const ends = quotient(sum(torque, prevailing), lever.value.gain);
  if (ends === null) return refused({ why: "not above zero", input: REACH });
  return explained({
    result: { name: "setting", symbol: "Ts", value: inUnitOf(asked.torque.value, ends) },
    formula: `Ts = ${terms.length > 1 ? "(T + Tp)" : "T"}${lever.value.formula}`,
    inputs: [...terms, ...lever.value.terms],
    source: SETTING_SOURCE,
    caution: SETTING_CAUTION,
  });
}

/** The torque at the bolt for a setting: the inverse of {@link wrenchSetting}, with the prevailing torque taken off. */
export function torqueAtBolt(
  set: { readonly setting: Given; readonly prevailing: Given | null },
  reach: Reach,
): Computed {
  const setting = input("setting", "Ts", "torque", set.setting);
  const prevailing = set.prevailing && input("prevailing torque", "Tp", "torque", set.prevailing);
  const read = readInputs({ setting, prevailing: prevailing ?? setting });
  const lever = leverOf(reach);
  if (!read.ok) return read;
  if (!lever.ok) return lever;
  const lost = prevailing === null ? point(ZERO) : read.value.prevailing;
  const ends = difference(product(read.value.setting, lever.value.gain), lost);
  return explained({
    result: { name: "torque at the bolt", symbol: "T", value: inUnitOf(set.setting.value, ends) },
    formula: `T = Ts${lever.value.inverse}${prevailing === null ? "" : " − Tp"}`,
    inputs: [setting, ...(prevailing === null ? [] : [prevailing])].map(termOf).concat(lever.value.terms),
    source: SETTING_SOURCE,
    caution: SETTING_CAUTION,
  });
}

/**
 * The settings that keep the bolt inside its band whatever the wrench's error is:
 * `(Tlow + Tp)·k/(1 − a) .. (Thigh + Tp)·k·(1 − a)`, with `k = L/(L + ΣE·cos α)`; of full scale, `+ a·S` and `− a·S` instead.
 *
 * The upper end is a little on the safe side of `/(1 + a)`, so that it holds for an error of the reading and of the true
 * value. Of a prevailing torque with a band, the end that narrows the window is taken. Refused with both limits where
 * nothing is left between them; a torque without a tolerance always is.
 */
export function settingWindow(
  asked: { readonly torque: Given; readonly prevailing: Given | null },
  reach: Reach,
  accuracy: Accuracy,
): Computed {
  const wanted = wantedAt(asked.torque, asked.prevailing);
  const lever = leverOf(reach);
  const error = errorOf(accuracy);
  if (!wanted.ok) return wanted;
  if (!lever.ok) return lever;
  if (!error.ok) return error;
  const { torque, prevailing, terms } = wanted.value;
  const { gain } = lever.value;
  const { share, scale } = error.value;
  const lowest = div(add(torque.low, prevailing.high), gain.low);
  const highest = div(add(torque.high, prevailing.low), gain.high);
  const off = scale === null ? null : mul(share, scale);
  const low = off === null ? div(lowest, sub(ONE, share)) : add(lowest, off);
  const high = off === null ? mul(highest, sub(ONE, share)) : sub(highest, off);
  const shown = (value: Rational): Quantity => inUnitOf(asked.torque.value, point(value));
  if (cmp(low, high) > 0) {
    return refused({ why: "nothing left", input: "setting window", low: shown(low), high: shown(high) });
  }
  const middle = torque.nominal && prevailing.nominal && gain.nominal;
  const nominal = middle && div(add(torque.nominal, prevailing.nominal), gain.nominal);
  const inside = nominal && cmp(nominal, low) >= 0 && cmp(nominal, high) <= 0 ? nominal : null;
  const total = terms.length > 1 ? (end: string) => `(T${end} + Tp)` : (end: string) => `T${end}`;
  const [below, above] = off === null ? ["/(1 − a)", "·(1 − a)"] : [" + a·S", " − a·S"];
  return explained({
    result: {
      name: "setting window",
      symbol: "Ts",
      value: inUnitOf(asked.torque.value, { low, nominal: inside, high }),
    },
    formula: `${total("low")}${lever.value.formula}${below} .. ${total("high")}${lever.value.formula}${above}`,
    inputs: [...terms, ...lever.value.terms, ...error.value.terms],
    source: `${SETTING_SOURCE}; the wrench's error on both sides (practice)`,
    caution: SETTING_CAUTION,
  });
}

/** Whether a setting leaves the range of a wrench, and on which side; null where it does not. An open end never does. */
export function beyondRange(setting: Quantity, range: Quantity): "below" | "above" | null {
  const [low, high] = [setting.low ?? setting.nominal, setting.high ?? setting.nominal];
  const [least, most] = range.form === "nominal" ? [null, range.nominal] : [range.low, range.high];
  if (high && most && cmp(high.base, most.base) > 0) return "above";
  return low && least && cmp(low.base, least.base) < 0 ? "below" : null;
}

/**
 * The lowest setting at which a wrench keeps an accuracy that is stated of the reading: 20 % of the top of its scale.
 * Source: TM 1-1500-204-23-9, table 8-1 (read). For click and dial wrenches whose maker says nothing else.
 */
export function lowestAccurateSetting(range: Given): Computed {
  const scale = positive("top of the scale", "S", "torque", range);
  const top = range.value.high ?? range.value.nominal;
  if (range.value.kind !== "torque") return refused({ why: "wrong kind", input: scale.name, wanted: "torque" });
  if (top === null) return refused({ why: "open end", input: scale.name, end: "high" });
  if (cmp(top.base, ZERO) <= 0) return refused({ why: "not above zero", input: scale.name });
  return explained({
    result: {
      name: "lowest accurate setting",
      symbol: "Ts",
      value: limitOf("torque", "at least", mul(top.base, ACCURATE_FROM), top.unit),
    },
    formula: "Ts = 0.2·S",
    inputs: [termOf(scale)],
    source: "TM 1-1500-204-23-9, table 8-1 (read)",
    caution: "The wrench's own certificate governs.",
  });
}

const ACCURATE_FROM = rational(1, 5);
const REACH = "arm with adapter";
const SETTING_SOURCE = "NAVEDTRA 14315, fig. 3-44 (read)";
const SETTING_CAUTION =
  "Only for this adapter, angle and arm, without an extension on the handle; check again if the tool changes.";

interface Wanted {
  readonly torque: Ends;
  readonly prevailing: Ends;
  readonly terms: readonly Term[];
}

function wantedAt(torque: Given, prevailing: Given | null): Outcome<Wanted> {
  const asked = input("torque", "T", "torque", torque);
  const running = prevailing && input("prevailing torque", "Tp", "torque", prevailing);
  const read = readInputs({ asked, running: running ?? asked });
  if (!read.ok) return read;
  const terms = running === null ? [asked] : [asked, running];
  const added = running === null ? point(ZERO) : read.value.running;
  return { ok: true, value: { torque: read.value.asked, prevailing: added, terms: terms.map(termOf) } };
}

/** By how much the adapters enlarge the torque: `1 + ΣE·cos α / L`, with what to show of it. */
interface Lever {
  readonly gain: Ends;
  readonly formula: string;
  readonly inverse: string;
  readonly terms: readonly Term[];
}

function leverOf({ arm, adapters }: Reach): Outcome<Lever> {
  const terms: Term[] = [];
  let reach = point(ZERO);
  for (const [at, adapter] of adapters.entries()) {
    const mark = adapters.length > 1 ? String(at + 1) : "";
    const along = alongAxis(adapter, mark);
    if (!along.ok) return along;
    terms.push(...along.value.terms.map(termOf));
    reach = sum(reach, along.value.ends);
  }
  if (isZero(reach.low) && isZero(reach.high)) {
    return { ok: true, value: { gain: point(ONE), formula: "", inverse: "", terms } };
  }
  if (arm === null) return refused({ why: "missing", input: ARM });
  const given = positive(ARM, "L", "length", arm);
  const length = readInput(given);
  if (!length.ok) return length;
  const share = quotient(reach, length.value);
  const gain = share && sum(point(ONE), share);
  if (gain === null || cmp(gain.low, ZERO) <= 0) return refused({ why: "not above zero", input: REACH });
  const total = [
    "L",
    ...adapters.map(({ angle }, at) => addend(angle !== null, adapters.length > 1 ? `${at + 1}` : "")),
  ].join(" + ");
  const formula = { formula: `·L/(${total})`, inverse: `·(${total})/L` };
  return { ok: true, value: { gain, ...formula, terms: [termOf(given), ...terms] } };
}

const ARM = "arm";

function addend(turned: boolean, mark: string): string {
  return turned ? `E${mark}·cos α${mark}` : `E${mark}`;
}

function alongAxis(
  { offset, angle }: Adapter,
  mark: string,
): Outcome<{ readonly ends: Ends; readonly terms: readonly Input[] }> {
  const length = input("adapter offset", `E${mark}`, "length", offset);
  const read = readInput(length);
  if (!read.ok) return read;
  if (angle === null) return { ok: true, value: { ends: read.value, terms: [length] } };
  const turned = input("adapter angle", `α${mark}`, "angle", angle);
  const turn = readInput(turned);
  if (!turn.ok) return turn;
  return { ok: true, value: { ends: product(read.value, cosine(turn.value)), terms: [length, turned] } };
}

function errorOf({ share, fullScale }: Accuracy): Outcome<{
  readonly share: Rational;
  readonly scale: Rational | null;
  readonly terms: readonly Term[];
}> {
  const part = input("accuracy", "a", "ratio", share);
  const scale = fullScale && positive("full scale", "S", "torque", fullScale);
  const read = readInput(part);
  const top = scale && readInput(scale);
  if (!read.ok) return read;
  if (top !== null && !top.ok) return top;
  const off = read.value.high;
  if (cmp(off, ZERO) < 0 || cmp(off, ONE) >= 0) {
    const limits = quantityOf("ratio", { low: ZERO, nominal: null, high: ONE }, unitBeside(share.value, "ratio", ONE));
    return refused({ why: "outside", input: part.name, limits });
  }
  const terms = scale === null ? [part] : [part, scale];
  return { ok: true, value: { share: off, scale: top === null ? null : top.value.high, terms: terms.map(termOf) } };
}

function inUnitOf(torque: Quantity, ends: Ends): Quantity {
  return quantityOf("torque", ends, unitBeside(torque, "torque", ends.high));
}

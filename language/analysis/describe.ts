// A variable's value in the words of the language: "Cover is removed", "MotorSupply is live".
import { UNKNOWN } from "./cell.ts";
import { AS_FOUND, boundsOf, carrierOf, holders, isInstalled, isTight, placeOf } from "./state-values.ts";
import type { World } from "./world.ts";

/** What the variable's value says of what it belongs to. */
export function describe(world: World, variable: number, value: string): string {
  const key = world.keyOf(variable);
  const aspect = key.slice(0, key.indexOf(":"));
  const subject = subjectOf(key.slice(aspect.length + 1));
  switch (aspect) {
    case "place":
      return `${subject} is ${placeWords(value)}`;
    case "grip":
      return `${subject} is ${gripWords(value, world.partOf(key.slice(aspect.length + 1))?.part.fastener ?? true)}`;
    case "surface":
      return value === "as found" ? `${subject} is as it was found` : `${subject} is ${value.split(" ")[0]}`;
    case "holder":
      return holderWords(subject, holders(value).map(subjectOf));
    case "used":
      return `${subject} is ${value === "fresh" ? "a new one" : "a used one"}`;
    case "aligned":
      return `${subject} is ${value === "yes" ? "" : "not "}aligned`;
    case "fact":
      return `${subject} is ${value === "yes" ? "" : "not "}given`;
    case "temperature":
      return `${subject} ${heatWords(value)}`;
    case "orientation":
      return value === UNKNOWN
        ? `${subject} stands somewhere`
        : `${subject}[1] is at ${clockText(Number(value))} o'clock`;
    default:
      return `${subject} is ${value}`;
  }
}

function clockText(hours: number): string {
  return String(hours === 0 ? 12 : Math.round(hours * 100) / 100);
}

/** `path#Procedure.Name[3]` without where it is declared. */
export function subjectOf(key: string): string {
  const name = key.slice(key.lastIndexOf("#") + 1);
  const bracket = name.indexOf("[");
  const plain = bracket < 0 ? name : name.slice(0, bracket);
  return plain.slice(plain.lastIndexOf(".") + 1) + (bracket < 0 ? "" : name.slice(bracket));
}

function holderWords(place: string, held: readonly string[]): string {
  if (held.length === 0) return `${place} is free`;
  return `${held.join(" and ")} ${held.length === 1 ? "is" : "are"} in ${place}`;
}

/** What is no fastener has no grip to be without. */
function gripWords(value: string, isFastener: boolean): string {
  if (isTight(value)) return "tightened";
  if (value === "absent") return isFastener ? "removed" : "not tightened";
  return value === AS_FOUND ? "in as it was found" : "loose";
}

function placeWords(value: string): string {
  const place = placeOf(value);
  if (place !== null) return `installed in ${subjectOf(place)}`;
  const carrier = carrierOf(value);
  if (carrier !== null)
    return isInstalled(value) ? `installed on ${subjectOf(carrier)}` : `on ${subjectOf(carrier)} on the bench`;
  return isInstalled(value) ? "installed" : "removed";
}

function heatWords(value: string): string {
  const bounds = boundsOf(value);
  if (bounds === null) return "has no known temperature";
  const celsius = (kelvin: number): string => String(Math.round((kelvin - 273.15) * 10) / 10);
  return bounds.low === bounds.high
    ? `is at ${celsius(bounds.low)} °C`
    : `may be at ${celsius(bounds.low)} .. ${celsius(bounds.high)} °C`;
}

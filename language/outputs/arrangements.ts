// Who goes where on a ring, for the bench: the list by position, what unbalance is left against what may be, and the serial for a
// step that puts one in. Knows no format.
import { type Arranged, arrangedBy } from "#analysis/limits/balance.ts";
import type { Declaration } from "#model/declarations.ts";
import type { ExpandedLine, Thing } from "#model/expanded.ts";
import type { ArrangementBlock } from "./document.ts";
import { placesFigure, viewText } from "./drawings/circle-figure.ts";
import type { Work } from "./work.ts";
import type { Writer } from "./writer.ts";

/** The arrangements of what this work installs, where each position has its part. */
export function arrangementBlocks(work: Work, writer: Writer): readonly ArrangementBlock[] {
  const installed = new Set(
    work.actions.flatMap(({ action, objects }) =>
      action.verb === "install" || action.verb === "press"
        ? objects.flatMap((thing) => (thing.kind === "part" ? [thing.part] : []))
        : [],
    ),
  );
  const declared = new Set(work.procedures.flatMap(({ declarations }) => declarations));
  return wholeOnes([...declared])
    .filter(({ arrangement: { part } }) => part !== null && installed.has(part))
    .map((arranged) => blockOf(arranged, writer));
}

/** Tells the serial that belongs where a line installs a part; null where none is given for it. */
export type SerialOf = (line: ExpandedLine) => { readonly position: number; readonly serial: string } | null;

export function serialsOf(declarations: readonly Declaration[]): SerialOf {
  const whole = wholeOnes(declarations);
  return (line) => {
    if (line.kind !== "action" || line.action.verb !== "install" || line.objects.length !== 1) return null;
    const [object] = line.objects;
    for (const { arrangement, ring, rows } of whole) {
      if (object?.kind !== "part" || object.part !== arrangement.part) continue;
      const position = positionOf(object, line.second, ring.id);
      const row = rows.find((one) => one.position === position);
      if (position !== null && row !== undefined) return { position, serial: row.serial };
    }
    return null;
  };
}

/** Where it goes: as the line says, else its own number where it seats by number. */
function positionOf(object: Thing & { readonly kind: "part" }, second: Thing | null, ring: string): number | null {
  if (second?.kind === "place") return second.places.id === ring ? second.position : null;
  const { seats } = object.part;
  const isOwn = seats !== null && seats.rule === "by number" && seats.places.id === ring;
  return isOwn && typeof object.index === "number" ? object.index : null;
}

function wholeOnes(declarations: readonly Declaration[]): readonly Arranged[] {
  return declarations.flatMap((one) => {
    const arranged = one.kind === "arrangement" && !one.damaged ? arrangedBy(one) : null;
    return arranged === null || arranged.faults.length > 0 ? [] : [arranged];
  });
}

function blockOf({ arrangement, ring, rows, residual, limits }: Arranged, writer: Writer): ArrangementBlock {
  const { arrangement: say, circle } = writer.words;
  const sorted = [...rows].sort((a, b) => (a.position ?? 0) - (b.position ?? 0));
  const figure = placesFigure(ring, writer);
  return {
    title: say.title(arrangement.part?.title ?? "", ring.title),
    name: arrangement.name,
    view: figure === null ? [viewText(ring, writer), circle.tooMany].filter((one) => one !== "").join(" ") : null,
    measure: rows[0]?.weight.kind === "mass moment" ? say.moment : say.mass,
    rows: sorted.map(({ position, serial, weight }) => ({
      position: String(position),
      serial,
      weight: writer.value(weight, "nominal"),
    })),
    residual: residual === null ? say.notKnown : writer.value(residual.value, "at least safe"),
    limits: limits.map(({ value, grade }) => {
      const shown = writer.value(value, "at most safe");
      return grade === null ? shown : say.grade(shown, grade.grade, writer.value(grade.speed, "nominal"));
    }),
    caution: say.caution,
    figure,
  };
}

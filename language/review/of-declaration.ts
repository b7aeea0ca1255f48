// A declaration as a node without insides. One table for each kind; knows no procedure.
import type {
  Arrangement,
  Capability,
  Conditioned,
  Consumable,
  Crib,
  Declaration,
  Energy,
  Fact,
  Fit,
  Hazard,
  Holes,
  Instances,
  Material,
  NamedValue,
  Option,
  Part,
  PartInstance,
  Relation,
  Ring,
  Role,
  Source,
  Reading as TakenReading,
  Term,
  Threshold,
  Tool,
} from "#model/declarations.ts";
import { showBoth } from "#quantity/display.ts";
import { cited, each, type Facet, type Facets, flag, saying, sayingsOf, thing, value, values, word } from "./facets.ts";
import { quantityText, type Reading, squeezed, withIndex } from "./reading.ts";
import { createNode, type Node } from "./record.ts";
import type { Label } from "./words.ts";

const DECLARED = {
  kind: null,
  id: null,
  span: null,
  extent: null,
  damaged: null,
  name: word("words", "name"),
  title: word("words", "title"),
  per: cited,
} satisfies Partial<Facets<Declaration>>;

/** A value that holds dry, with a consumable, or without a word of it; each condition has its own. */
function conditioned(label: Label): Facet<readonly Conditioned[]> {
  return (all, at) =>
    all.flatMap(({ value: one, condition }) => {
      const when =
        condition === null ? "always" : "dry" in condition ? "dry" : `with ${at.reading.nameOf(condition.with)}`;
      return values(label, "must be met")([one], { ...at, key: `${at.key} ${when}` });
    });
}

function relations(label: Label): Facet<readonly Relation[]> {
  return (all, at) =>
    all.map(({ part, which, span }) => {
      const instances = typeof which === "string" ? which : which.join(", ");
      const text = `${at.reading.nameOf(part)} ${instances}`;
      const shown = which === "all" ? part.name : `${part.name}[${instances}]`;
      return saying("order", label, at, { key: text, text, shown, span });
    });
}

const INSTANCES: Facet<Instances> = (instances, at) => {
  const { form } = instances;
  if (form === "single") return [];
  const text = form === "numbered" ? `${instances.first} .. ${instances.last}` : instances.names.join(", ");
  return [saying("items", "instances", at, { text })];
};

const INSTANCE: Facet<PartInstance | null> = (instance, at) =>
  instance === null
    ? []
    : [saying("items", "fit-part", at, { text: withIndex(at.reading.nameOf(instance.part), instance.index) })];

const CLOCK_START: Facet<Ring["start"]> = (start, at) =>
  start === null
    ? []
    : [
        ...word("items", "start-position")(start.position, at),
        ...value("clock", "must be met")(start.clock, { ...at, key: "start clock" }),
      ];

const CAPABILITY: Facets<Capability> = {
  torque: value("tool-torque", "occurs"),
  accuracy: value("accuracy", "nominal"),
  accuracyOfFullScale: flag("values", "of-full-scale"),
  arm: value("arm", "nominal"),
  offset: value("offset", "nominal"),
  angle: value("angle", "nominal"),
  heatsTo: value("heats-to", "at most safe"),
  coolsTo: value("cools-to", "at least safe"),
  lifts: value("lifts", "at most safe"),
  legLifts: value("leg-lifts", "at most safe"),
  measures: value("measures", "occurs"),
  resolution: value("resolution", "nominal"),
  force: value("force", "at most safe"),
};

const capability: Facet<Capability> = (one, { reading, span, key }) =>
  sayingsOf(CAPABILITY, one, reading, span).map((said) => ({ ...said, key: `${key} ${said.key}` }));

const HAZARDS: Facet<readonly string[]> = each(word("safety", "raises"));

const MATERIAL: Facets<Material> = {
  ...DECLARED,
  expansion: value("expansion", "nominal"),
  expansionRange: value("expansion", "nominal"),
  heatLimit: value("heat-limit", "at most safe"),
};
const SOURCE: Facets<Source> = { ...DECLARED, revision: word("items", "source-revision") };
const ROLE: Facets<Role> = DECLARED;
const RING: Facets<Ring> = {
  ...DECLARED,
  count: word("items", "count"),
  numbered: word("order", "numbering"),
  seenFrom: word("order", "seen-from"),
  start: CLOCK_START,
  fill: word("order", "fill-direction"),
};
const HOLES: Facets<Holes> = {
  ...DECLARED,
  count: word("items", "count"),
  order: (order, at) => word("order", "tightening-order")(order === null ? null : order.join(", "), at),
};
const PART: Facets<Part> = {
  ...DECLARED,
  temporary: flag("order", "temporary"),
  instances: INSTANCES,
  material: thing("items", "material"),
  mass: value("mass", "at least safe"),
  heatLimit: value("heat-limit", "at most safe"),
  cools: value("cooling-rate", "at least safe"),
  seats: (seats, at) => {
    if (seats === null) return [];
    const rule = typeof seats.rule === "string" ? seats.rule : `at ${seats.rule.join(", ")}`;
    const text = `${at.reading.nameOf(seats.places)} ${rule}`;
    return [saying("items", "seat", at, { text, shown: `${seats.places.name}, ${rule}`, span: seats.span })];
  },
  needs: relations("needs"),
  encloses: relations("encloses"),
  retains: relations("retains"),
  secures: relations("secures"),
  locks: relations("locks"),
  backsUp: relations("backs-up"),
  singleUse: flag("order", "single-use"),
  sharp: flag("safety", "sharp"),
  stands: flag("safety", "stands"),
  fastener: null,
  thread: word("values", "thread"),
  propertyClass: word("values", "property-class"),
  grade: word("values", "grade"),
  nutFactors: conditioned("nut-factor"),
  frictions: conditioned("friction"),
  prevailingTorque: value("prevailing-torque", "nominal"),
  torques: conditioned("torque"),
  drivenBy: each(thing("safety", "driven-by")),
  hazards: HAZARDS,
  states: (states, at) => word("items", "states")(states.length === 0 ? null : states.join(", "), at),
};
const FIT: Facets<Fit> = {
  ...DECLARED,
  outer: INSTANCE,
  inner: INSTANCE,
  diameter: value("diameter", "nominal"),
  interference: value("interference", "occurs"),
  tolerance: (tolerance, at) =>
    tolerance === null
      ? []
      : [...word("values", "tolerance")(tolerance.text, at), ...cited(tolerance.per, { ...at, key: "tolerance per" })],
  slipClearance: value("slip-clearance", "at least safe"),
  length: value("length", "nominal"),
  friction: value("friction", "nominal"),
};
const TOOL: Facets<Tool> = { ...DECLARED, capability, hazards: HAZARDS };
const CONSUMABLE: Facets<Consumable> = {
  ...DECLARED,
  flashPoint: value("flash-point", "at most safe"),
  heatLimit: value("heat-limit", "at most safe"),
  cure: value("cure", "at least safe"),
  density: value("density", "nominal"),
  pressure: value("pressure", "at least safe"),
  expands: value("expansion", "nominal"),
  hazards: HAZARDS,
};
const ENERGY: Facets<Energy> = {
  ...DECLARED,
  off: flag("safety", "off"),
  marks: each(word("safety", "energy-kind")),
  voltage: value("voltage", "at least safe"),
  pressure: value("pressure", "at least safe"),
  hot: value("hot", "at least safe"),
  stored: value("stored-energy", "at least safe"),
  hazards: HAZARDS,
};
const HAZARD: Facets<Hazard> = DECLARED;
const OPTION: Facets<Option> = {
  ...DECLARED,
  choices: (choices, at) =>
    choices.map(({ name, title, span }) =>
      saying("items", "choice", at, {
        key: name,
        text: title,
        shown: title === name ? name : `${name} “${title}”`,
        span,
      }),
    ),
};
const FACT: Facets<Fact> = DECLARED;
const NAMED_VALUE: Facets<NamedValue> = { ...DECLARED, value: value("value", "must be met") };
// Its title and what is expected of it stand in the line that takes it.
const READING: Facets<TakenReading> = { ...DECLARED, title: null, expect: null };
const THRESHOLD: Facets<Threshold> = { ...DECLARED, value: value("threshold", "at most safe") };
const ARRANGEMENT: Facets<Arrangement> = {
  ...DECLARED,
  part: thing("items", "arranged"),
  ring: thing("items", "arranged"),
  radius: value("radius", "nominal"),
  unbalance: value("unbalance", "at most safe"),
  speed: value("speed", "at least safe"),
  mass: value("mass", "at least safe"),
  grade: (grade, at) => word("values", "grade")(grade?.text ?? null, at),
  from: (from, at) => word("items", "table")(from?.path ?? null, at),
  rows: (rows, at) => {
    if (rows === null) return [];
    // A line for each row, so that what differs can be told. In which order they stand says nothing.
    const lines = rows
      .map(({ serial, position, weight }) => ({
        text: `${squeezed(serial)} ${position ?? "-"} ${quantityText(weight)}`,
        shown: () => `${squeezed(serial)} (${position ?? "-"}, ${showBoth(weight, "nominal")})`,
      }))
      .sort((a, b) => (a.text < b.text ? -1 : 1));
    const text = lines.map((line) => line.text).join("\n");
    const shown = (): string => lines.map((line) => line.shown()).join("\n");
    return [saying("items", "table-rows", at, { text, shown })];
  },
};
const CRIB: Facets<Crib> = {
  ...DECLARED,
  items: (items, at) =>
    items.flatMap(({ label, tool, capability: able, calibratedUntil, span }) => {
      const own = { ...at, key: `item ${label}`, span };
      const until = { ...own, key: `${own.key} calibrated until` };
      return [
        saying("items", "crib-item", own, { text: tool === null ? "?" : at.reading.nameOf(tool), shown: label }),
        ...capability(able, own),
        ...word("items", "calibrated-until")(calibratedUntil, until),
      ];
    }),
};

const TABLES: { readonly [Kind in Declaration["kind"]]: Facets<Extract<Declaration, { kind: Kind }>> } = {
  material: MATERIAL,
  source: SOURCE,
  role: ROLE,
  ring: RING,
  holes: HOLES,
  part: PART,
  fit: FIT,
  tool: TOOL,
  consumable: CONSUMABLE,
  energy: ENERGY,
  hazard: HAZARD,
  option: OPTION,
  fact: FACT,
  value: NAMED_VALUE,
  reading: READING,
  threshold: THRESHOLD,
  arrangement: ARRANGEMENT,
  crib: CRIB,
};

export function declarationNode(declared: Declaration | Term, reading: Reading): Node {
  return declared.kind === "term" ? termNode(declared, reading) : thingNode(declared, reading);
}

function thingNode(declared: Declaration, reading: Reading): Node {
  const { kind, name, title, span, extent } = declared;
  const isTitled = title !== name;
  const said = sayingsOf(TABLES[kind] as Facets<Declaration>, declared, reading, span);
  const subject = `${kind} ${name}`;
  return createNode({
    sort: "declaration",
    name: `${kind} ${reading.nameOf(declared)}`,
    about: [subject],
    says: said.filter(({ key }) => key !== "title" || isTitled),
    span: extent,
    title: () => [subject, ...said.filter(({ key }) => OF_TITLE.has(key)).map(({ shown }) => shown())].join(", "),
    subject,
  });
}

/** What is told of one that comes or goes. */
const OF_TITLE: ReadonlySet<string> = new Set(["value"]);

const TERM: Facets<Term> = {
  kind: null,
  span: null,
  approved: word("words", "name"),
  replaces: each(word("words", "replaced")),
};

function termNode(term: Term, reading: Reading): Node {
  const says = sayingsOf(TERM, term, reading, term.span);
  const title = `term “${term.approved}”`;
  return createNode({
    sort: "declaration",
    name: title,
    about: [title],
    says,
    span: term.span,
    title: () => title,
    subject: title,
  });
}

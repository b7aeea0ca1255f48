// A procedure as a tree of nodes: its head, and all that stands in it. Knows no other procedure.
import type { Procedure } from "#model/procedure.ts";
import { cited, each, type Facets, named, saying, sayingsOf, value, word } from "./facets.ts";
import { allows, conditions, nodesOf } from "./of-step.ts";
import type { Reading } from "./reading.ts";
import { createNode, type Node } from "./record.ts";

const PROCEDURE: Facets<Procedure> = {
  id: null,
  path: null,
  span: null,
  extent: null,
  declarations: null,
  terms: null,
  items: null,
  // They stand among the items too.
  statements: null,
  notes: null,
  hasAmbient: null,
  hasFinish: null,
  unknownAtStart: null,
  name: (name, at) => named("words", "name")({ name }, at),
  title: word("words", "title"),
  document: (document, at) => {
    if (document === null) return [];
    const { number, revision, date, span } = document;
    const place = { ...at, span };
    return [
      ...word("words", "document-number")(number, { ...place, key: "document number" }),
      ...word("words", "revision")(revision, { ...place, key: "document revision" }),
      ...word("words", "date")(date, { ...place, key: "document date" }),
    ];
  },
  applies: each(({ model, firstSerial, lastSerial, span }, at) => {
    const text = [model, firstSerial ?? "", lastSerial ?? ""].join(" ");
    const serials = [firstSerial, lastSerial].filter((serial) => serial !== null).join(" .. ");
    const shown = serials === "" ? model : `${model}, serial ${serials}`;
    return [saying("items", "applies-to", at, { text, shown, span })];
  }),
  basedOn: each(({ source, revision, span }, at) => {
    const name = source === null ? "?" : at.reading.nameOf(source);
    const shown = `${source?.title ?? "?"} revision ${revision}`;
    return [saying("items", "based-on", at, { text: `${name} ${revision}`, shown, span })];
  }),
  ambient: value("ambient", "occurs"),
  room: value("room", "at most safe"),
  crew: word("values", "crew"),
  begin: conditions("start-condition"),
  finish: conditions("end-condition"),
  cites: each(cited),
  allows,
};

export function procedureNode(procedure: Procedure, reading: Reading): Node {
  const { name, extent, title, span } = procedure;
  const holds = nodesOf(procedure.items, reading);
  const says = sayingsOf(PROCEDURE, procedure, reading, span);
  return createNode({ sort: "procedure", name, says, holds, span: extent, title: () => title });
}

// A safety statement as a DITA hazard statement. Knows the document only.
import { type Markup, markup } from "../checklist/html-markup.ts";
import type { StatementBlock } from "../document.ts";
import type { Words } from "../words/en.ts";

/** The project's caution is for equipment, which the standards call a notice. */
const TYPES: Readonly<Record<StatementBlock["signal"], string>> = {
  danger: "danger",
  warning: "warning",
  caution: "notice",
};

export function hazardXml({ signal, hazards, text, avoid, wear }: StatementBlock, words: Words): Markup {
  const avoidance = [
    ...(avoid === null ? [] : [avoid]),
    ...(wear.length === 0 ? [] : [`${words.labels.wear}: ${words.comma(wear)}`]),
  ];
  const said = avoidance.length === 0 ? [words.dita.noAvoidance] : avoidance;
  return markup`<hazardstatement type="${TYPES[signal]}"><messagepanel><typeofhazard>${words.comma(hazards)}</typeofhazard><consequence>${text}</consequence>${said.map((how) => markup`<howtoavoid>${how}</howtoavoid>`)}</messagepanel></hazardstatement>`;
}

// What a DITA task says where its form has no box round it: where something ends, and all that is to be known of a line that is
// done after a failed check.
import { expect, test } from "vitest";
import { ditaXml } from "#outputs/dita/xml.ts";
import { en } from "#outputs/words/en.ts";
import { documentAs } from "./make.ts";
import { around } from "./procedures.ts";

function ditaOf(lines: string): string {
  return ditaXml(documentAs("dita", around(lines), { units: "si" }), en);
}

test("it is said where a repeat and an order left free end", () => {
  const xml = ditaOf('in any order { step "a." step "b." } repeat n in 1, 2 { step install Screw[n] } step "c."');
  const headings = [...xml.matchAll(/<p outputclass="heading"><b>([^<]*)/g)].map(([, text]) => text);
  expect(headings).toEqual([
    "In any order, each one complete before the next:",
    "End of: In any order, each one complete before the next",
    "Once for each n, in this order: 1, 2",
    "End of: Once for each n, in this order: 1, 2",
  ]);
  expect(xml.indexOf("End of: Once")).toBeLessThan(xml.indexOf(">Step 4<"));
});

test("what is done after a failed check has its values, its order and its limits", () => {
  const xml = ditaOf(`step { check "It holds" if it fails {
    tighten Foot[all] in order to 50 %, 100 % of 80 ± 7 N·m with Wrench
    measure "gap" with Depth expect at most 2 mm record
  } }`);
  const failing = xml.slice(xml.indexOf("If it fails"));
  for (const text of [
    "Round 1: 40 ± 3.5 N·m",
    "Round 2: 80 ± 7 N·m",
    "Order of positions: 1 – 4 – 2 – 3.",
    "must be at most 2 mm",
  ])
    expect(failing).toContain(text);
  // The DTD knows no `info` in an entry of a list (OASIS DITA 1.3, `li`; read in Debian's dita-ot).
  expect(failing.slice(failing.indexOf("<ol>"), failing.indexOf("</ol>"))).not.toContain("<info>");
});

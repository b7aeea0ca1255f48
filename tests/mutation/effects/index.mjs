// Every effect that the break script breaks: where it stands, the text to find there, and what stands there instead.
import { CLOCKS } from "./clocks.mjs";
import { ENDS } from "./ends.mjs";
import { FASTENERS } from "./fasteners.mjs";
import { PARTS } from "./parts.mjs";
import { RINGS } from "./rings.mjs";
import { WAYS } from "./ways.mjs";

/**
 * One list for each file of `language/analysis`: name, text to find, replacement; for one that nothing can tell, or that lies outside
 * what the brute-force run knows, the reason why; for the latter the test that notices it.
 */
export const EFFECTS = [...PARTS, ...FASTENERS, ...RINGS, ...WAYS, ...CLOCKS, ...ENDS].flatMap(({ file, breaks }) =>
  breaks.map(([name, find, by, why, test]) => ({ file, name, find, by: inPlaceOf(find, by), why, test })),
);

/** A statement that goes leaves an empty one: what comes after it must not become what an `if` before it asks for. */
function inPlaceOf(find, by) {
  return by === "" && find.endsWith(";") ? ";" : by;
}

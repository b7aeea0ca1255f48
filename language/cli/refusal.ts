// A call or a file that cannot be used: one clear line, status 2. Thrown where a whole call ends, collected where other
// files go on.
import { printable } from "./printable.ts";

/** What cannot be used, why, and what would do: each a sentence of its own. */
export class Refusal extends Error {}

/** One file that could not be used, while others were. */
export interface Trouble {
  readonly path: string;
  /** Without the path in front: `is not there.` */
  readonly message: string;
}

export function troubleLine({ path, message }: Trouble): string {
  return `${path} ${message}`;
}

/** As it is printed; further lines stand under the first. */
export function refusalText(message: string): string {
  return `sprag: ${printable(message).replaceAll("\n", "\n       ")}\n`;
}

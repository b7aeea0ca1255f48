// What the façade is given: an immutable picture of a workspace, and nothing it could look up for itself.

/** Paths are relative to the workspace root, with `/`. */
export interface Snapshot {
  /** Texts that are known. */
  readonly texts: ReadonlyMap<string, string>;
  /** Files that are there though their text was not given: figures, tables. */
  readonly present: ReadonlySet<string>;
  /** Bytes of figures, for outputs that show them; null for one that could not be read or is too large. */
  readonly bytes?: ReadonlyMap<string, Uint8Array | null>;
  /** Paths that were looked for and are not there. */
  readonly absent: ReadonlySet<string>;
  /** ISO date, for calibration and the like. */
  readonly today: string;
  /** The file with the shop's crib, where a call names no other. */
  readonly crib?: string;
}

/** A file the façade would like to know of: its text, only whether it is there, or (for an output alone) its bytes. */
export interface Wanted {
  readonly path: string;
  readonly need: "text" | "presence" | "bytes";
}

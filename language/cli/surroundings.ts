// What the command knows of the place it runs in, as plain data, so that a test can stand in for a terminal. Knows no
// command.

export interface Surroundings {
  readonly cwd: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly out: Stream;
  readonly err: Stream;
  readonly now: () => Date;
  /** A file that comes with the command, from its folder `assets`. */
  readonly asset: (name: string) => Promise<Uint8Array>;
  /** Speaks the editor protocol on standard input and output until the editor ends; starts that and comes back. */
  readonly serve: () => void;
  /** Has plain data worked on in another thread (`checkInThread`), and what comes of it; absent where there are no threads. */
  readonly thread?: (work: unknown) => Promise<unknown>;
  /** Tells once when the work is to end: on Ctrl-C, or where nobody reads on. */
  readonly onStop?: (tell: () => void) => void;
}

export interface Stream {
  readonly write: (content: string | Uint8Array) => void;
  /** Whether a person looks at it while it is written. */
  readonly isTerminal: boolean;
  /** Width in columns; null where it has none. */
  readonly columns: number | null;
}

/** Exit statuses; see `sprag --help`. */
export const STATUS = { fine: 0, findings: 1, unusable: 2 } as const;
export type Status = (typeof STATUS)[keyof typeof STATUS];

/**
 * The date that calibrations and the like are held against: the one given, else the one of the environment, so that a
 * build can be repeated, else today's.
 */
export function dateOf(given: string | undefined, { env, now }: Surroundings): string {
  if (given !== undefined) return given;
  const seconds = Number(env.SOURCE_DATE_EPOCH ?? "");
  const fixed = new Date(seconds * 1000);
  const isFixed = (env.SOURCE_DATE_EPOCH ?? "") !== "" && !Number.isNaN(fixed.getTime());
  return (isFixed ? fixed : now()).toISOString().slice(0, 10);
}

/** Whether colours are wanted: NO_COLOR and FORCE_COLOR as usual, else on a terminal that has them. */
export function wantsColour(stream: Stream, env: Surroundings["env"]): boolean {
  if ((env.NO_COLOR ?? "") !== "") return false;
  const forced = env.FORCE_COLOR;
  if (forced !== undefined && forced !== "") return forced !== "0" && forced !== "false";
  return stream.isTerminal && env.TERM !== "dumb";
}

// Changes as edits of plain records, so that a report can be carried out on the old record. Knows no model.

/** A record as plain data: what is said of it by key, and what it holds. */
export interface Plain {
  readonly id: string;
  readonly sort: string;
  readonly says: Readonly<Record<string, string>>;
  readonly holds: readonly Plain[];
}

export type Edit =
  | { readonly do: "set"; readonly id: string; readonly key: string; readonly to: string | null }
  | { readonly do: "drop"; readonly id: string }
  | ({ readonly do: "put"; readonly node: Omit<Plain, "holds"> } & At)
  | ({ readonly do: "move"; readonly id: string } & At);

/** Where it goes: into what, behind what (null: first), and when, for what stands behind others that are put there too. */
interface At {
  readonly into: string;
  readonly behind: string | null;
  readonly turn: number;
}

// What an action needs and what it changes, as data: the shape in which meanings are written down. Knows no verb's meaning.
import type { Direction, Energy, Part, Ring } from "#model/declarations.ts";
import type { Span } from "#syntax/span.ts";
import type { Test, Update } from "../update.ts";
import type { Index } from "../world.ts";

/** A need that is not met where every one of `bad` can be so at once. No `bad`: it is never met. */
export interface Need {
  readonly bad: readonly Test[];
  readonly trouble: Trouble;
}

/** One instance at a time: first what is needed, then what changes. */
export interface Move {
  readonly needs: readonly Need[];
  readonly updates: readonly Update[];
}

/** What several instances have in common: part of a move. */
export const NOTHING: Move = { needs: [], updates: [] };

/** Part of a move that only needs something, or only changes something. */
export function needing(needs: readonly Need[]): Move {
  return needs.length === 0 ? NOTHING : { needs, updates: [] };
}
export function changing(updates: readonly Update[]): Move {
  return updates.length === 0 ? NOTHING : { needs: [], updates };
}

/** One after the other: all that both need, all that both change. */
export function both(...moves: readonly Move[]): Move {
  // Most of what an instance could need or change, it does not: then nothing is put together.
  const [only = NOTHING, ...others] = moves.filter((move) => move !== NOTHING);
  if (others.length === 0) return only;
  const needs: Need[] = [];
  const updates: Update[] = [];
  // Asked for at every action on every instance: plain loops cost a fifth of what `flatMap` does.
  for (const move of moves) {
    for (const need of move.needs) needs.push(need);
    for (const update of move.updates) updates.push(update);
  }
  return { needs, updates };
}

/** What is wrong when a need is not met; places of its own are those of declarations. */
export type Trouble =
  /** `by`: the fastener that is worked on, where the part is what it secures. */
  | { readonly kind: "not installed"; readonly part: string; readonly verb: string; readonly by: string | null }
  | { readonly kind: "already installed"; readonly part: string }
  | {
      readonly kind: "occupied";
      readonly part: string;
      readonly place: string;
      readonly holder: number;
      readonly key: string;
    }
  | {
      readonly kind: "wrong place";
      readonly part: string;
      readonly place: string;
      readonly own: string;
      readonly seats: Span;
    }
  | {
      readonly kind: "missing support";
      readonly part: string;
      readonly needs: string;
      readonly declaredAt: Span;
      readonly variable: number;
    }
  | {
      readonly kind: "enclosed";
      readonly part: string;
      readonly by: string;
      readonly verb: string;
      readonly declaredAt: Span;
    }
  | {
      readonly kind: "retained";
      readonly part: string;
      readonly by: string;
      readonly how: "retains" | "tightened" | "loose";
      readonly declaredAt: Span;
    }
  /** Found at the place that put it in; `closedBy` closes over it here. */
  | { readonly kind: "closed over"; readonly what: string; readonly closedBy: string }
  | {
      readonly kind: "locked";
      readonly part: string;
      readonly by: string;
      readonly verb: string;
      readonly declaredAt: Span;
    }
  | { readonly kind: "not tightened"; readonly part: string }
  | { readonly kind: "reused"; readonly part: string; readonly verb: string }
  | {
      readonly kind: "unsupported";
      readonly part: Part;
      readonly index: Index;
      readonly fastener: string | null;
      readonly verb: string;
    }
  | {
      readonly kind: "uncured";
      readonly part: string;
      readonly how: "loaded" | "closed over" | "restored";
      readonly by: string;
    }
  | {
      readonly kind: "direction";
      readonly part: string;
      readonly place: string;
      readonly wanted: Direction;
      readonly declaredAt: Span;
    }
  | {
      readonly kind: "position";
      readonly part: string;
      readonly ring: Ring;
      readonly position: number;
      readonly wanted: number;
    }
  | { readonly kind: "cold fit"; readonly part: string; readonly mate: string; readonly declaredAt: Span }
  | {
      readonly kind: "energised" | "not proved";
      readonly part: Part;
      readonly index: Index;
      readonly energy: Energy;
      readonly verb: string;
    }
  | {
      readonly kind: "restored open";
      readonly energy: string;
      readonly part: string;
      readonly what: string;
      readonly how: "out" | "loose" | "temporary";
    }
  | { readonly kind: "wasted"; readonly what: string; readonly verb: string };

// Tightening and loosening: grip, locks, single use. Knows the verbs tighten and loosen.
import type { Part } from "#model/declarations.ts";
import { isAttached, isInstalled, isSlack, isSpent, putBack } from "../state-values.ts";
import { type Index, instanceName, type World } from "../world.ts";
import { clamping } from "./curing.ts";
import { lastFastenerLoose } from "./loads.ts";
import { both, changing, type Move, type Need, NOTHING, needing } from "./move.ts";
import { notInstalled } from "./placing.ts";
import { workOn } from "./reaching.ts";

/** `grip`: how it is afterwards; run in by hand it is still loose. */
export function tighten(world: World, part: Part, index: Index, grip: "run in" | "tight" | "seated"): Move {
  const secured = world.targets("secures", part, index).map((held) => {
    const place = world.part(held.part, held.index, "place");
    return notInstalled(held.part, held.index, place, "tighten", part.name);
  });
  return both(
    needing([notInstalled(part, index, world.part(part, index, "place"), "tighten"), ...secured]),
    workOn(world, part, index, "tighten"),
    needing(locked(world, part, index, "tighten")),
    tightenedAgain(world, part, index),
    clamping(world, part, index),
    changing([{ variable: world.part(part, index, "grip"), renews: "always", change: () => grip }]),
  );
}

/** `set`: loosened by an angle only, which still counts as tight. */
export function loosen(world: World, part: Part, index: Index, grip: "loose" | "set"): Move {
  const place = world.part(part, index, "place");
  const variable = world.part(part, index, "grip");
  const notTight: Need = {
    bad: [
      { variable, test: isSlack },
      { variable: place, test: isAttached },
    ],
    trouble: { kind: "not tightened", part: instanceName(part, index) },
  };
  return both(
    needing([notInstalled(part, index, place, "loosen"), notTight]),
    workOn(world, part, index, "loosen"),
    needing(locked(world, part, index, "loosen")),
    grip === "loose" ? lastFastenerLoose(world, part, index) : NOTHING,
    changing([{ variable, renews: "always", change: () => grip }]),
    part.singleUse && grip === "loose" ? spending(world, part, index) : NOTHING,
  );
}

/** One that is in was loosened; one that is out was removed before. */
function spending(world: World, part: Part, index: Index): Move {
  return changing([
    {
      variable: world.part(part, index, "used"),
      by: world.part(part, index, "place"),
      change: (_, at, __, isTaken) => (!isAttached(at) ? "removed" : isTaken ? putBack("removed") : "loosened"),
    },
  ]);
}

function locked(world: World, part: Part, index: Index, verb: string): readonly Need[] {
  const locks = world.related("locks", part, index);
  return locks.map(({ part: by, index: at, relation }) => ({
    bad: [
      { variable: world.part(by, at, "place"), test: isInstalled },
      { variable: world.part(part, index, "place"), test: isAttached },
    ],
    trouble: {
      kind: "locked",
      part: instanceName(part, index),
      by: instanceName(by, at),
      verb,
      declaredAt: relation.span,
    },
  }));
}

/** A fastener of single use that was loosened is not tightened again; told once, it is taken as new. One that is out was put back first. */
function tightenedAgain(world: World, part: Part, index: Index): Move {
  if (!part.singleUse) return NOTHING;
  const variable = world.part(part, index, "used");
  const isIn = { variable: world.part(part, index, "place"), test: isAttached };
  return {
    needs: [
      {
        bad: [{ variable, test: isSpent }, isIn],
        trouble: { kind: "reused", part: instanceName(part, index), verb: "tighten" },
      },
    ],
    updates: [
      // One that was loosened is in, whatever else may be so on other ways.
      { variable, change: (value) => (value === "loosened" ? "fresh" : value) },
      { variable, when: [[isIn]], change: (value) => (isSpent(value) ? "fresh" : value) },
    ],
  };
}

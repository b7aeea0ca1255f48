// What a wrench is set to for a fastener, by itself and with adapters: whether its scale holds it, and which settings keep the bolt
// inside its band. Knows no state and tells of nothing.
import { type Adapter, beyondRange, settingWindow, wrenchSetting } from "#engineering/wrench.ts";
import type { Capability, Part, Tool, Value } from "#model/declarations.ts";
import type { TightenAction } from "#model/procedure.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { prevailingOf } from "./at-node.ts";
import { finalOf } from "./torques.ts";

/** Whether a wrench can be set to every stage with the adapters of this line, and is exact enough for the last. */
export function canBeSetTo(action: TightenAction, part: Part, adapters: readonly Adapter[]): (tool: Tool) => boolean {
  const prevailing = prevailingOf(part);
  const final = finalOf(action);
  return ({ capability }) => {
    const { torque, arm } = capability;
    if (torque === null) return false;
    const reach = { arm: arm && { value: arm.quantity }, adapters };
    const reachesAll = action.stages.every(({ quantity }) => {
      const setting = wrenchSetting({ torque: { value: quantity }, prevailing }, reach);
      return setting.ok && beyondRange(setting.value, torque.quantity) === null;
    });
    if (!reachesAll || final === null || final.quantity.form === "nominal") return reachesAll;
    return !isTooInaccurate(windowOf(capability, final, part, adapters));
  };
}

/** The settings that keep the bolt inside its band whatever the wrench's error is; null where no error is said. */
export function windowOf(
  { accuracy, accuracyOfFullScale, arm, torque }: Capability,
  final: Value,
  part: Part,
  adapters: readonly Adapter[],
): ReturnType<typeof settingWindow> | null {
  const fullScale = accuracyOfFullScale ? topGiven(torque) : null;
  if (accuracy === null || (accuracyOfFullScale && fullScale === null)) return null;
  const reach = { arm: arm && { value: arm.quantity }, adapters };
  const torqueBand = { torque: { value: final.quantity }, prevailing: prevailingOf(part) };
  return settingWindow(torqueBand, reach, { share: { value: accuracy.quantity }, fullScale });
}

function isTooInaccurate(window: ReturnType<typeof settingWindow> | null): boolean {
  return window !== null && !window.ok && window.refusal.why === "nothing left";
}

/** The top of a scale; null where it is open. */
export function topGiven(range: Value | null): { readonly value: Quantity } | null {
  const end = range?.quantity.high ?? range?.quantity.nominal ?? null;
  if (range === null || end === null) return null;
  return { value: { ...range.quantity, form: "nominal", low: null, nominal: end, high: null } };
}

// The one list of all rules. A rule that stands here is checked, explained and tested; nothing else has to know of it.

import { badJump } from "./flow/bad-jump.ts";
import { empty } from "./flow/empty.ts";
import { endless } from "./flow/endless.ts";
import { impossibleCondition } from "./flow/impossible-condition.ts";
import { tooLarge } from "./flow/too-large.ts";
import { unreachable } from "./flow/unreachable.ts";
import { armUnknown } from "./limits/arm-unknown.ts";
import { balance } from "./limits/balance.ts";
import { choice } from "./limits/choice.ts";
import { flashPoint } from "./limits/flash-point.ts";
import { noCondition } from "./limits/no-condition.ts";
import { noHeatLimit } from "./limits/no-heat-limit.ts";
import { noTool } from "./limits/no-tool.ts";
import { overheat } from "./limits/overheat.ts";
import { overload } from "./limits/overload.ts";
import { overtorque } from "./limits/overtorque.ts";
import { spacing } from "./limits/spacing.ts";
import { tooCoolToFit } from "./limits/too-cool-to-fit.ts";
import { toolAccuracy } from "./limits/tool-accuracy.ts";
import { toolRange } from "./limits/tool-range.ts";
import { torqueCondition } from "./limits/torque-condition.ts";
import { torqueDisagrees } from "./limits/torque-disagrees.ts";
import { torqueStages } from "./limits/torque-stages.ts";
import { undertorque } from "./limits/undertorque.ts";
import { duplicate } from "./names/duplicate.ts";
import { needsInstance } from "./names/needs-instance.ts";
import { noSuchInstance } from "./names/no-such-instance.ts";
import { outsideWorkspace } from "./names/outside-workspace.ts";
import { unknown as unknownName } from "./names/unknown.ts";
import { unused } from "./names/unused.ts";
import { useCycle } from "./names/use-cycle.ts";
import { alreadyInstalled } from "./order/already-installed.ts";
import { coldFit } from "./order/cold-fit.ts";
import { declared } from "./order/declared.ts";
import { direction } from "./order/direction.ts";
import { enclosed } from "./order/enclosed.ts";
import { energised } from "./order/energised.ts";
import { leftBehind } from "./order/left-behind.ts";
import { leftSeated } from "./order/left-seated.ts";
import { locked } from "./order/locked.ts";
import { missingSupport } from "./order/missing-support.ts";
import { notFinal } from "./order/not-final.ts";
import { notInstalled } from "./order/not-installed.ts";
import { notProved } from "./order/not-proved.ts";
import { notTightened } from "./order/not-tightened.ts";
import { occupied } from "./order/occupied.ts";
import { position } from "./order/position.ts";
import { restoredOpen } from "./order/restored-open.ts";
import { retained } from "./order/retained.ts";
import { reused } from "./order/reused.ts";
import { tooLate } from "./order/too-late.ts";
import { uncured } from "./order/uncured.ts";
import { unfinished } from "./order/unfinished.ts";
import { unmetNeed } from "./order/unmet-need.ts";
import { unsupported } from "./order/unsupported.ts";
import { wasted } from "./order/wasted.ts";
import { wrongPlace } from "./order/wrong-place.ts";
import type { Rule } from "./rule.ts";
import { dualMaintenance } from "./safety/dual-maintenance.ts";
import { idle } from "./safety/idle.ts";
import { instructionInNote } from "./safety/instruction-in-note.ts";
import { missing } from "./safety/missing.ts";
import { noAvoidance } from "./safety/no-avoidance.ts";
import { noSecondCheck } from "./safety/no-second-check.ts";
import { protection } from "./safety/protection.ts";
import { signalWord } from "./safety/signal-word.ts";
import { tooLate as statementTooLate } from "./safety/too-late.ts";
import { character } from "./syntax/character.ts";
import { dashRange } from "./syntax/dash-range.ts";
import { decimalComma } from "./syntax/decimal-comma.ts";
import { reservedWord } from "./syntax/reserved-word.ts";
import { unclosed } from "./syntax/unclosed.ts";
import { unexpected } from "./syntax/unexpected.ts";
import { calibration } from "./trace/calibration.ts";
import { noCribItem } from "./trace/no-crib-item.ts";
import { noRecord } from "./trace/no-record.ts";
import { noSource } from "./trace/no-source.ts";
import { oldRevision } from "./trace/old-revision.ts";
import { unusedAllow } from "./trace/unused-allow.ts";
import { weakAllow } from "./trace/weak-allow.ts";
import { ambiguous } from "./units/ambiguous.ts";
import { impossible } from "./units/impossible.ts";
import { mismatch } from "./units/mismatch.ts";
import { precision } from "./units/precision.ts";
import { reversedRange } from "./units/reversed-range.ts";
import { style } from "./units/style.ts";
import { unknown as unknownUnit } from "./units/unknown.ts";
import { longSentence } from "./wording/long-sentence.ts";
import { manyActions } from "./wording/many-actions.ts";
import { notImperative } from "./wording/not-imperative.ts";
import { numberDrift } from "./wording/number-drift.ts";
import { passive } from "./wording/passive.ts";
import { term } from "./wording/term.ts";
import { vague } from "./wording/vague.ts";

/** In the order of the catalogue. */
export const RULES: readonly Rule[] = [
  unclosed,
  decimalComma,
  dashRange,
  reservedWord,
  unexpected,
  character,
  unknownName,
  duplicate,
  noSuchInstance,
  needsInstance,
  outsideWorkspace,
  useCycle,
  unused,
  unknownUnit,
  mismatch,
  reversedRange,
  impossible,
  ambiguous,
  precision,
  style,
  toolRange,
  armUnknown,
  toolAccuracy,
  noTool,
  torqueStages,
  torqueDisagrees,
  torqueCondition,
  overtorque,
  undertorque,
  noCondition,
  overheat,
  noHeatLimit,
  flashPoint,
  tooCoolToFit,
  overload,
  spacing,
  balance,
  choice,
  notInstalled,
  alreadyInstalled,
  occupied,
  wrongPlace,
  missingSupport,
  enclosed,
  retained,
  locked,
  notTightened,
  leftSeated,
  reused,
  unsupported,
  uncured,
  unmetNeed,
  declared,
  direction,
  position,
  coldFit,
  tooLate,
  energised,
  notProved,
  restoredOpen,
  leftBehind,
  unfinished,
  notFinal,
  wasted,
  unreachable,
  impossibleCondition,
  endless,
  badJump,
  tooLarge,
  empty,
  missing,
  statementTooLate,
  idle,
  signalWord,
  noAvoidance,
  protection,
  instructionInNote,
  noSecondCheck,
  dualMaintenance,
  noSource,
  oldRevision,
  noCribItem,
  calibration,
  noRecord,
  unusedAllow,
  weakAllow,
  longSentence,
  manyActions,
  notImperative,
  passive,
  vague,
  numberDrift,
  term,
];

// A filled record against the procedure it says it was made from. Knows no file and no arguments; the record may be anything.
import type { Procedure } from "#model/procedure.ts";
import { pageText } from "#outputs/head.ts";
import { planOf } from "#outputs/record/plan-of.ts";
import { type RecordFault, readRecord } from "#outputs/record/read-record.ts";
import type { FilledRecord } from "#outputs/record/record.ts";
import { type RecordFinding, verifyRecord } from "#outputs/record/verify.ts";
import { WORDS } from "#outputs/words/index.ts";
import { workOf } from "#outputs/work.ts";
import { contentHash } from "./hash.ts";
import type { Workspace } from "./workspace.ts";

export interface VerifyRequest {
  readonly path: string;
  /** The text of the record. */
  readonly record: string;
  /** Choices that it has to be filled in for; those of the record where absent. */
  readonly set?: Readonly<Record<string, string>>;
  /** The crib that the checklist was made with. */
  readonly crib?: string;
}

export type VerifyResult =
  | { readonly kind: "done"; readonly report: VerifyReport }
  | { readonly kind: "no file" }
  | { readonly kind: "no record"; readonly fault: RecordFault }
  /** The file has no such procedure. */
  | { readonly kind: "no procedure"; readonly name: string; readonly known: readonly string[] };

/** What `sprag verify --format json` prints. */
export interface VerifyReport {
  readonly version: 1;
  readonly document: string;
  readonly procedure: string;
  readonly hash: string;
  readonly options: FilledRecord["options"];
  readonly findings: readonly RecordFinding[];
  readonly summary: {
    readonly findings: number;
    readonly events: number;
    /** Places that the work came by, and how many of them are marked. */
    readonly marked: number;
    readonly complete: boolean;
  };
}

/** Total: a record that was tampered with gives findings. */
export function verify(workspace: Workspace, request: VerifyRequest): VerifyResult {
  const model = workspace.loaded.models.get(request.path);
  if (model === undefined) return { kind: "no file" };
  const read = readRecord(request.record);
  if (!read.ok) return { kind: "no record", fault: read.fault };
  const { record } = read;
  const procedure = model.procedures.find(({ name }) => name === record.procedure);
  if (procedure === undefined)
    return { kind: "no procedure", name: record.procedure, known: model.procedures.map(({ name }) => name) };
  const { crib = workspace.snapshot.crib } = request;
  const hash = contentHash(workspace, request.path, crib);
  const { findings, filling } = verifyRecord(
    planFor(workspace, procedure, {
      hash,
      options: request.set ?? knownOf(workspace, procedure, record.options),
      document: documentOf(procedure, record.document),
    }),
    record,
  );
  return {
    kind: "done",
    report: {
      version: 1,
      document: record.document,
      procedure: record.procedure,
      hash,
      options: record.options,
      findings,
      summary: {
        findings: findings.length,
        events: record.events.length,
        marked: filling?.marks.size ?? 0,
        complete: filling?.position.isComplete ?? false,
      },
    },
  };
}

/** Options that the procedure asks about, with choices that they have. */
function knownOf(
  workspace: Workspace,
  procedure: Procedure,
  options: FilledRecord["options"],
): FilledRecord["options"] {
  const known = new Map(
    workOf(workspace.expanded(procedure), {}, workspace.expandedOf).options.map((one) => [one.name, one]),
  );
  return Object.fromEntries(
    Object.entries(options).filter(([name, choice]) => known.get(name)?.choices.some((one) => one.name === choice)),
  );
}

/** Which document it is, in the language of the record where that says it truly. */
function documentOf(procedure: Procedure, said: string): string {
  const [first = "", ...others] = [...WORDS.values()].map((words) => pageText(procedure, words));
  return others.includes(said) ? said : first;
}

function planFor(
  workspace: Workspace,
  procedure: Procedure,
  given: Pick<FilledRecord, "hash" | "options" | "document">,
) {
  const { expandedOf } = workspace;
  const expanded = workspace.expanded(procedure);
  return planOf({ expanded, work: workOf(expanded, given.options, expandedOf), expandedOf, ...given });
}

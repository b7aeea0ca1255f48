// Checklists made from a text: the one place where tests of outputs touch the API.
import type { BuildInput } from "#outputs/build.ts";
import { buildChecklist } from "#outputs/checklist/build.ts";
import { checklistHtml } from "#outputs/checklist/html.ts";
import { checklistMarkdown } from "#outputs/checklist/md.ts";
import type { Block, Document, StepRow } from "#outputs/document.ts";
import { OUTPUTS } from "#outputs/index.ts";
import { en, type Words } from "#outputs/words/en.ts";
import { openWorkspace, type Workspace } from "#workspace/workspace.ts";

export interface Made {
  readonly document: Document;
  readonly html: string;
  readonly md: string;
}

export type Wishes = Partial<
  Pick<BuildInput, "options" | "units" | "repeats" | "draft" | "shown" | "answers" | "findings">
>;

/** The first procedure of the text, in both units and with repeats put together unless wished otherwise. */
export function make(text: string, wishes: Wishes = {}, words: Words = en): Made {
  return makeFrom(workspaceOf(text), "main.sprag", 0, wishes, words);
}

function workspaceOf(text: string): Workspace {
  const texts = new Map([["main.sprag", text]]);
  return openWorkspace({ texts, present: new Set(), absent: new Set(), today: "2026-05-04" });
}

export function makeFrom(workspace: Workspace, path: string, at = 0, wishes: Wishes = {}, words: Words = en): Made {
  return write(buildChecklist(inputFrom(workspace, path, at, wishes), words), words);
}

/** The first procedure of the text as the document of an output. */
export function documentAs(output: string, text: string, wishes: Wishes = {}, words: Words = en): Document {
  const build = OUTPUTS.get(output)?.build;
  if (build === undefined) throw new Error(`no output ${output}`);
  return build(inputFrom(workspaceOf(text), "main.sprag", 0, wishes), words);
}

export function inputFrom(workspace: Workspace, path: string, at: number, wishes: Wishes): BuildInput {
  const procedure = workspace.loaded.models.get(path)?.procedures[at];
  if (procedure === undefined) throw new Error(`no procedure ${at} in ${path}`);
  return {
    expanded: workspace.expanded(procedure),
    findings: workspace.findings([path]),
    hash: "5f3a",
    options: {},
    units: "both",
    repeats: "compact",
    draft: false,
    expandedOf: workspace.expandedOf,
    ...wishes,
  };
}

export function write(document: Document, words: Words = en): Made {
  return { document, html: checklistHtml(document, words), md: checklistMarkdown(document, words) };
}

/** Every block, in the order in which it is read. */
export function* blocksIn(blocks: readonly Block[]): Generator<Block> {
  for (const block of blocks) {
    yield block;
    if (block.kind === "branch") for (const arm of block.arms) yield* blocksIn(arm.blocks);
    else if (block.kind === "section" || block.kind === "step" || block.kind === "group") yield* blocksIn(block.blocks);
    else if (block.kind === "instruction") {
      yield* blocksIn(block.failing?.blocks ?? []);
      yield* blocksIn(block.performed === null ? [] : [block.performed]);
    }
  }
}

export function stepsIn(document: Document): readonly StepRow[] {
  return [...blocksIn(document.blocks)].filter((block) => block.kind === "step");
}

/** What is to be done, line by line. */
export function instructionsIn(document: Document): readonly string[] {
  return [...blocksIn(document.blocks)].flatMap((block) => (block.kind === "instruction" ? [block.text] : []));
}

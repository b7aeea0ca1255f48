// A procedure as the editor shows it beside its text: the same output that is exported, with the places that its rows come from.
// What was found may be older than the text, so that nothing has to be followed at a keystroke. Knows no editor.
import type { BuildInput } from "#outputs/build.ts";
import type { Block, Document } from "#outputs/document.ts";
import { createRowMemory, type RowMemory } from "#outputs/kept-rows.ts";
import { base64, pictureOf } from "#outputs/pictures.ts";
import { resolveUse } from "#syntax/scope.ts";
import type { Span } from "#syntax/span.ts";
import {
  type Checked,
  checkedFor,
  type ExportRequest,
  inputFor,
  outputFormats,
  type Sought,
  soughtBy,
} from "./export.ts";
import type { Workspace } from "./workspace.ts";

export type PreviewRequest = Omit<ExportRequest, "format" | "fonts" | "draft">;

export type PreviewResult =
  | {
      readonly kind: "done";
      /** A page of HTML, or a picture as SVG. */
      readonly content: string;
      readonly form: PreviewForm;
      /** Pictures stay in their files: the content names them by sources that are no pictures. */
      readonly figures: readonly PlacedFigure[];
      readonly rows: readonly PlacedRow[];
      /** Whether every line of the file could be read. */
      readonly whole: boolean;
      readonly checked: Checked;
      /** For the next preview. */
      readonly memory: RowMemory;
    }
  | Exclude<Sought, { readonly kind: "found" }>;

export interface PlacedFigure {
  /** As the content has it: the type is the picture's. */
  readonly src: string;
  readonly path: string;
}

/** A step's row, or the first row of a task or of a procedure that is performed. */
export interface PlacedRow {
  readonly id: string;
  readonly span: Span;
}

/** Formats that can be shown as they are, the best first. */
const FORMS = ["html", "svg"] as const;
export type PreviewForm = (typeof FORMS)[number];

/** Outputs that have a preview. */
export function previewOutputs(): readonly string[] {
  return outputFormats()
    .filter(({ formats }) => formOf(formats) !== undefined)
    .map(({ as }) => as);
}

/**
 * @param known what an earlier check of the same procedure found; null where it is to be checked now
 * @param memory that of an earlier preview, of this state of the text or another: what stayed is not made again
 */
export function previewAs(
  workspace: Workspace,
  request: PreviewRequest,
  known: Checked | null,
  memory: RowMemory = createRowMemory(),
): PreviewResult {
  const form = formOf(outputFormats().find(({ as }) => as === request.as)?.formats ?? []) ?? "html";
  const sought = soughtBy(workspace, { ...request, format: form });
  if (sought.kind !== "found") return sought;
  const { procedure, output, write, words } = sought;
  const checked = known ?? checkedFor(workspace, procedure, request);
  const figures = new Map<string, PlacedFigure>();
  const input = {
    ...inputFor(workspace, procedure, { ...request, draft: false }, checked),
    figure: standIns(workspace, figures),
    // What is filled in on a screen is not filled in here: without its record the page has no script.
    shown: true,
    memory,
  };
  const document = output.build(input, words);
  const content = write(document, { words, fonts: noFonts });
  if (typeof content !== "string") return { kind: "unknown format", known: [] };
  const whole = workspace.loaded.models.get(request.path)?.damaged !== true;
  return {
    kind: "done",
    content,
    form,
    figures: [...figures.values()],
    rows: rowsOf(document),
    whole,
    checked,
    memory,
  };
}

function formOf(formats: readonly string[]): PreviewForm | undefined {
  return FORMS.find((form) => formats.includes(form));
}

/** For each picture a few bytes that are of its type and no other picture's; a page of photographs would be too much for a keystroke. */
function standIns({ snapshot }: Workspace, found: Map<string, PlacedFigure>): NonNullable<BuildInput["figure"]> {
  return (from, named) => {
    const path = resolveUse(from, named) ?? "";
    const bytes = snapshot.bytes?.get(path) ?? null;
    const { image } = pictureOf("", path, bytes);
    if (bytes === null || image === null) return null;
    const standIn = Uint8Array.of(...bytes.subarray(0, HEAD), ...new TextEncoder().encode(path));
    found.set(path, { src: `data:${image.type};base64,${base64(standIn)}`, path });
    return standIn;
  };
}

/** In bytes: by these the types of pictures are told. */
const HEAD = 16;

/** What is shown has the typefaces of the screen. */
function noFonts(): Promise<never> {
  return Promise.reject(new Error("a preview embeds no typeface"));
}

/** In the order of the document; what is around another comes before it. */
function rowsOf({ blocks }: Document): readonly PlacedRow[] {
  const rows: PlacedRow[] = [];
  const enter = (block: Block): void => {
    if (block.kind === "step") rows.push({ id: block.id, span: block.at });
    const before = rows.length;
    insideOf(block).forEach(enter);
    const first = rows[before];
    if (block.kind === "section" && first !== undefined) rows.splice(before, 0, { id: first.id, span: block.at });
  };
  blocks.forEach(enter);
  return rows;
}

function insideOf(block: Block): readonly Block[] {
  switch (block.kind) {
    case "section":
    case "step":
    case "group":
      return block.blocks;
    case "branch":
      return block.arms.flatMap((arm) => arm.blocks);
    case "instruction":
      return [...(block.failing?.blocks ?? []), ...(block.performed === null ? [] : [block.performed])];
    default:
      return [];
  }
}

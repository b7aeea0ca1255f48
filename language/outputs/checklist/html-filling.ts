// What a checklist needs to be filled in on a screen: the bar below the page, its data and the one script, and the policy that lets
// nothing else run. Knows the document only.
import { raw } from "hono/html";
import type { Block, Computed, Document } from "../document.ts";
import type { Words } from "../words/en.ts";
import { PAGE_HASH, PAGE_SCRIPT } from "./generated/page.ts";
import { type Markup, markup, nothing } from "./html-markup.ts";

/** Nothing is loaded from anywhere; the script is told by its hash. */
export function policyOf({ record }: Document): string {
  const script = record === null ? [] : [`script-src '${PAGE_HASH}'`];
  return [
    "default-src 'none'",
    ...script,
    "style-src 'unsafe-inline'",
    "img-src data:",
    "form-action 'none'",
    "base-uri 'none'",
  ].join("; ");
}

/** Stands at the end of the page; nothing where the checklist is not filled in. */
export function fillingHtml(document: Document, words: Words): Markup {
  const { record } = document;
  if (record === null) return nothing;
  const data = { plan: record, words: words.page, computed: computedIn(document.blocks) };
  return markup`<div id="bar" hidden></div>
<p id="say" role="status" aria-live="polite"></p>
<script type="application/json" id="data">${raw(scriptData(data))}</script>
<script>${raw(PAGE_SCRIPT)}</script>
`;
}

/** JSON that can end no script element, whatever texts are in it. */
function scriptData(data: object): string {
  return JSON.stringify(data).replace(
    /[<>&\u2028\u2029]/g,
    (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
}

/** By the first entry of their instruction. */
function computedIn(blocks: readonly Block[]): Readonly<Record<string, readonly Computed[]>> {
  const found: [string, readonly Computed[]][] = [];
  const enter = (inner: readonly Block[]): void => {
    for (const block of inner) {
      switch (block.kind) {
        case "instruction":
          if (block.computed.length > 0) found.push([block.ids[0] ?? "", block.computed]);
          enter(block.failing?.blocks ?? []);
          enter(block.performed === null ? [] : [block.performed]);
          break;
        case "branch":
          for (const arm of block.arms) enter(arm.blocks);
          break;
        case "section":
        case "step":
        case "group":
          enter(block.blocks);
          break;
      }
    }
  };
  enter(blocks);
  return Object.fromEntries(found);
}

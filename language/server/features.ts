// Every feature of the server: the one list.

import { callHierarchy } from "./call-hierarchy.ts";
import { codeActions } from "./code-actions.ts";
import { codeLens } from "./code-lens.ts";
import { completion } from "./completion.ts";
import { definition } from "./definition.ts";
import { exporting } from "./exporting.ts";
import type { Feature } from "./feature.ts";
import { folding } from "./folding.ts";
import { formatting } from "./formatting.ts";
import { highlights } from "./highlights.ts";
import { hover } from "./hover.ts";
import { inlayHints } from "./inlay-hints.ts";
import { links } from "./links.ts";
import { preview } from "./preview.ts";
import { references } from "./references.ts";
import { rename } from "./rename.ts";
import { review } from "./review.ts";
import { ruleDocuments } from "./rule-documents.ts";
import { selection } from "./selection.ts";
import { semanticTokens } from "./semantic-tokens.ts";
import { starter } from "./starter.ts";
import { symbols } from "./symbols.ts";
import { workspaceSymbols } from "./workspace-symbols.ts";

export const FEATURES: readonly Feature[] = [
  definition,
  references,
  rename,
  highlights,
  symbols,
  workspaceSymbols,
  callHierarchy,
  links,
  folding,
  selection,
  codeLens,
  codeActions,
  completion,
  semanticTokens,
  hover,
  inlayHints,
  formatting,
  exporting,
  preview,
  review,
  starter,
  ruleDocuments,
];

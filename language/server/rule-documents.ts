// Pages of rules on request, for the link of a finding's code.
import { explain, pageMarkdown } from "#rules/explain.ts";
import type { Feature } from "./feature.ts";
import { answerOwn } from "./own-requests.ts";
import type { AskedOfServer } from "./protocol.ts";

export const ruleDocuments: Feature = {
  capabilities: () => ({}),
  start: ({ connection }) => {
    answerOwn(connection, "sprag/rule", ({ code }) => rulePage(code));
  },
};

function rulePage(code: string): AskedOfServer["sprag/rule"]["result"] {
  const found = explain(code);
  if (!found.known) return null;
  return { code: found.code, title: found.code, markdown: pageMarkdown(found) };
}

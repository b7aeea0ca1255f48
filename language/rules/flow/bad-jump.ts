// flow.bad-jump: a jump into a repeat, a branch or a block in any order, back to what comes later or ahead to what came before.
import { rule } from "../rule.ts";

export const badJump = rule({
  code: "flow.bad-jump",
  severity: "error",
  about: "bad jump",
  page: {
    finds:
      "A jump that leads into a repeat, another branch or a child of “in any order” from outside; a “return to” that leads forwards, and a “go to” that leads backwards. What comes after it is not followed.",
    why: "Whoever follows such a jump does not know which pass it is, whether the condition holds, or what has been done. And a reader who is told to return looks in the pages before.",
    fails: `part Seal "shaft seal"

procedure Fit "Fit the seal" {
  step Inspect {
    inspect Seal
    check "The lip is whole" if it fails { return to Replace }
  }
  step "Write the seal down as whole."
  step Replace "Lay a new seal out."
}
`,
    mended: `part Seal "shaft seal"

procedure Fit "Fit the seal" {
  step Inspect {
    inspect Seal
    check "The lip is whole" if it fails { go to Replace }
  }
  step "Write the seal down as whole."
  step Replace "Lay a new seal out."
}
`,
  },
  say: ({ to, why, toSpan }) => ({ ...sayings(to)[why], related: [{ message: `${to} stands here`, span: toSpan }] }),
  fix: ({ span, to, why }) => {
    if (why !== "forwards" && why !== "backwards") return [];
    const newText = `${why === "forwards" ? "go to" : "return to"} ${to}`;
    return [{ title: `Write “${newText}”`, edits: [{ span, newText }] }];
  },
});

const sayings = (to: string) => ({
  forwards: {
    message: `“return to ${to}” leads forwards.`,
    why: `${to} comes after this.`,
    remedy: `Write “go to ${to}”, or name a step before this.`,
  },
  backwards: {
    message: `“go to ${to}” leads backwards.`,
    why: `${to} comes before this.`,
    remedy: `Write “return to ${to}”, or name a step after this.`,
  },
  "into a repeat": {
    message: `This jump leads into a repeat, to ${to}.`,
    why: "From outside it is not said which pass is meant.",
    remedy: "Lead to a step outside the repeat, or move the jump into it.",
  },
  "into a branch": {
    message: `This jump leads into another branch, to ${to}.`,
    why: "That branch is done only where its condition holds.",
    remedy: "Lead to a step outside the branch, or move the jump into it.",
  },
  "into any order": {
    message: `This jump leads into a block in any order, to ${to}.`,
    why: "Which of its steps have been done by then is not known.",
    remedy: "Lead to a step outside the block.",
  },
});

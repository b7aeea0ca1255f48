// What became of a file since older texts, which the client hands in: this server asks no history. The same review as the
// command's. Knows no view of it.
import type { ReviewReport } from "#workspace/review.ts";
import type { Snapshot } from "#workspace/snapshot.ts";
import { openWorkspace, type Workspace } from "#workspace/workspace.ts";
import { refusalOf } from "./exporting.ts";
import type { Feature } from "./feature.ts";
import { answerOwn } from "./own-requests.ts";
import type { OldText, ReviewAnswer, ReviewChange } from "./protocol.ts";
import type { FileView } from "./view.ts";
import type { Say } from "./words.ts";

export const review: Feature = {
  capabilities: () => ({}),
  start: (session, say) => {
    answerOwn(session.connection, "sprag/review", ({ uri, old }, token) =>
      session.ask<ReviewAnswer>(uri, token, (view) => reviewed(view, old, say), {
        kind: "refused",
        ...refusalOf({ kind: "no file" }, { as: "" }, say),
      }),
    );
  },
};

async function reviewed(view: FileView, old: readonly OldText[], say: Say): Promise<ReviewAnswer> {
  const { path, workspace, folder } = view;
  const before = olderWorkspace(view, old);
  const wanted = before.wanted.filter(({ need }) => need === "text");
  if (wanted.length > 0) return { kind: "wanted", uris: wanted.map((one) => folder.uriOf(one.path)) };
  if (!before.loaded.parsed.has(path))
    return {
      kind: "refused",
      message: say("This file was not there before."),
      remedy: say("All of it is new: read it as a whole."),
    };
  const [then, now] = [
    { workspace: before, paths: [path] },
    { workspace, paths: [path] },
  ];
  const { reviewOf, unreadIn } = await import("#workspace/review.ts");
  const { changes } = reviewOf(then, now);
  const unread = [...new Set([...unreadIn(then), ...unreadIn(now)])].map(folder.uriOf);
  return { kind: "done", unread, changes: changes.map((change) => sent(change, view)) };
}

/** The folder as it was, as far as the client has told; figures and tables are taken to be where they are now. */
function olderWorkspace({ folder, workspace, path }: FileView, old: readonly OldText[]): Workspace {
  const { present, today, crib } = workspace.snapshot;
  const texts = new Map<string, string>();
  const absent = new Set<string>();
  for (const { uri, text } of old) {
    const of = folder.pathOf(uri);
    if (of === null) continue;
    if (text === null) absent.add(of);
    else texts.set(of, text);
  }
  if (!texts.has(path)) absent.add(path);
  const known: Snapshot = { texts, present, absent, today, ...(crib === undefined ? {} : { crib }) };
  const opened = openWorkspace(known);
  const maybe = opened.wanted.filter(({ need }) => need !== "text");
  if (maybe.length === 0) return opened;
  return openWorkspace({ ...known, absent: new Set([...absent, ...maybe.map((one) => one.path)]) }, opened);
}

type Reported = ReviewReport["changes"][number];

function sent(
  { group, kind, message, step, procedure, findings, signAgain, ...sides }: Reported,
  { folder }: FileView,
): ReviewChange {
  const place = ({ path, range }: NonNullable<Reported["old"]>) => ({ uri: folder.uriOf(path), range });
  const sentences = (found: readonly { readonly message: string; readonly code: string }[] = []) =>
    found.map(({ message: said, code }) => `${said} (${code})`);
  return {
    group,
    kind,
    message,
    procedure,
    ...(step === undefined ? {} : { step: step.name === undefined ? step.number : `${step.number} ${step.name}` }),
    ...(sides.old === undefined ? {} : { old: place(sides.old) }),
    ...(sides.new === undefined ? {} : { new: place(sides.new) }),
    came: sentences(findings?.came),
    went: sentences(findings?.went),
    signAgain: signAgain ?? [],
  };
}

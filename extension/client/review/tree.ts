// What changed since the last commit, as a tree: groups by gravity, in each the changes, in each what follows from it. An entry leads
// to both sides. What changed, the server says.
import {
  EventEmitter,
  l10n,
  MarkdownString,
  ThemeColor,
  ThemeIcon,
  type TreeDataProvider,
  TreeItem,
  TreeItemCollapsibleState,
} from "vscode";
import type { ReviewChange } from "../../../language/server/protocol.ts";

/** A line of the tree. */
export type Entry =
  | { readonly kind: "group"; readonly group: ReviewChange["group"]; readonly changes: readonly ReviewChange[] }
  | { readonly kind: "change"; readonly change: ReviewChange }
  | { readonly kind: "consequence"; readonly words: string; readonly icon: string; readonly of: ReviewChange };

export interface ChangesTree extends TreeDataProvider<Entry> {
  readonly show: (changes: readonly ReviewChange[]) => void;
}

const OPEN_CHANGE = "sprag.openChange";

export function createChangesTree(): ChangesTree {
  const changed = new EventEmitter<undefined>();
  let groups: readonly Entry[] = [];
  return {
    onDidChangeTreeData: changed.event,
    show: (changes) => {
      const names = [...new Set(changes.map(({ group }) => group))];
      groups = names.map((group) => ({ kind: "group", group, changes: changes.filter((one) => one.group === group) }));
      changed.fire(undefined);
    },
    getChildren: (entry) => (entry === undefined ? [...groups] : [...insideOf(entry)]),
    getTreeItem: itemOf,
  };
}

function insideOf(entry: Entry): readonly Entry[] {
  if (entry.kind === "group") return entry.changes.map((change) => ({ kind: "change", change }));
  if (entry.kind === "consequence") return [];
  const { came, went, signAgain } = entry.change;
  const of = entry.change;
  return [
    ...signAgain.map((role) => ({ words: l10n.t("{0} must sign again", role), icon: "pass" })),
    ...came.map((words) => ({ words: l10n.t("New finding: {0}", words), icon: "warning" })),
    ...went.map((words) => ({ words: l10n.t("Finding gone: {0}", words), icon: "check" })),
  ].map((one) => ({ kind: "consequence", of, ...one }));
}

function itemOf(entry: Entry): TreeItem {
  switch (entry.kind) {
    case "group": {
      const item = new TreeItem(groupWords(entry.group), TreeItemCollapsibleState.Expanded);
      item.description = String(entry.changes.length);
      item.iconPath =
        entry.group === "safety" ? new ThemeIcon("shield", new ThemeColor("charts.red")) : ThemeIcon.Folder;
      return item;
    }
    case "change": {
      const { message, step, procedure } = entry.change;
      const hasMore = insideOf(entry).length > 0;
      const item = new TreeItem(message, hasMore ? TreeItemCollapsibleState.Expanded : TreeItemCollapsibleState.None);
      const place = step === undefined ? procedure : l10n.t("step {0}", step);
      item.description = place;
      item.tooltip = new MarkdownString().appendText([message, place].filter((text) => text !== "").join("\n"));
      item.iconPath = new ThemeIcon(iconOf(entry.change));
      item.command = { command: OPEN_CHANGE, title: l10n.t("Open both sides"), arguments: [entry.change] };
      return item;
    }
    case "consequence": {
      const item = new TreeItem(entry.words);
      item.iconPath = new ThemeIcon(entry.icon);
      item.command = { command: OPEN_CHANGE, title: l10n.t("Open both sides"), arguments: [entry.of] };
      return item;
    }
  }
}

function iconOf(change: ReviewChange): string {
  if (change.old === undefined) return "diff-added";
  return change.new === undefined ? "diff-removed" : "diff-modified";
}

function groupWords(group: ReviewChange["group"]): string {
  const words: Readonly<Record<ReviewChange["group"], string>> = {
    safety: l10n.t("Safety"),
    values: l10n.t("Values"),
    order: l10n.t("Order of work"),
    items: l10n.t("Parts, tools, consumables, sources, options"),
    words: l10n.t("Words"),
    layout: l10n.t("Layout only"),
  };
  return words[group];
}

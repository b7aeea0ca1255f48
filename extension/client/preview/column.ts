// Where a preview goes: beside its text, and below it where that would be a column too many. Knows no preview.
import { commands, type TextEditor, ViewColumn, window } from "vscode";

/** A column of its own or one that is there; makes room below the text that is the last of several columns. */
export async function columnFor(editor: TextEditor | undefined): Promise<ViewColumn> {
  const column = editor?.viewColumn;
  if (column === undefined) return ViewColumn.Beside;
  // Beside the walkthrough, say: three columns are too narrow to read any of them.
  if (column > ViewColumn.One && column === window.tabGroups.all.length) {
    const layout = await commands.executeCommand<Layout>("vscode.getEditorLayout");
    const [last, ...others] = [...layout.groups].reverse();
    if (layout.orientation !== COLUMNS || last === undefined || last.groups !== undefined) return ViewColumn.Beside;
    // By layout, not by what has the focus: the walkthrough takes that back.
    const groups = [...others.reverse(), { ...last, groups: [{}, {}] }];
    await commands.executeCommand("vscode.setEditorLayout", { ...layout, groups });
  }
  return column + 1;
}

/** As the editor describes how its groups stand; those inside one stand the other way. */
interface Layout {
  readonly orientation: number;
  readonly groups: readonly Group[];
}

interface Group {
  readonly size?: number;
  readonly groups?: readonly Group[];
}

const COLUMNS = 0;

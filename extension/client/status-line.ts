// The status entry beside the language: what is being checked, what was, or why nothing is. Knows only what it is told.
import { type Disposable, LanguageStatusSeverity, l10n, languages } from "vscode";
import type { Status } from "../../language/server/protocol.ts";

export interface StatusLine extends Disposable {
  readonly told: (status: Status) => void;
  readonly starting: () => void;
  /** The server is off, and stays so until the reader starts it. */
  readonly off: (why: string) => void;
}

export function createStatusLine(): StatusLine {
  const item = languages.createLanguageStatusItem("sprag.status", { language: "sprag" });
  item.name = "Sprag";
  const show = (text: string, detail = "", severity = LanguageStatusSeverity.Information): void => {
    item.text = text;
    item.detail = detail;
    item.severity = severity;
    item.busy = false;
  };
  const busy = (text: string): void => {
    show(text);
    item.busy = true;
  };
  const command = (id: string, title: string): void => {
    item.command = { command: id, title };
  };
  return {
    starting: () => busy(l10n.t("Starting the checker")),
    off: (why) => {
      show(l10n.t("Not checked"), why, LanguageStatusSeverity.Error);
      command("sprag.restartServer", l10n.t("Start Again"));
    },
    told: (status) => {
      command("sprag.checkFolder", l10n.t("Check All Files"));
      switch (status.state) {
        case "reading":
          return busy(l10n.t("Reading {0} of {1} files", status.done, status.of));
        case "checking":
          return busy(l10n.t("Checking {0} of {1} files", status.done, status.of));
        case "checked":
          command("sprag.showProblems", l10n.t("Show Problems"));
          return show(checkedFiles(status.files), counts(status.errors, status.warnings));
        case "stopped":
          return show(
            l10n.t("Checked {0} of {1} files", status.done, status.of),
            status.why,
            LanguageStatusSeverity.Warning,
          );
      }
    },
    dispose: () => item.dispose(),
  };
}

function checkedFiles(files: number): string {
  return files === 1 ? l10n.t("1 file checked") : l10n.t("{0} files checked", files);
}

function counts(errors: number, warnings: number): string {
  if (errors === 0 && warnings === 0) return l10n.t("nothing found");
  const said = [
    errors === 0 ? "" : errors === 1 ? l10n.t("1 error") : l10n.t("{0} errors", errors),
    warnings === 0 ? "" : warnings === 1 ? l10n.t("1 warning") : l10n.t("{0} warnings", warnings),
  ];
  return said.filter((part) => part !== "").join(", ");
}

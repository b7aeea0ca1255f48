// What one thing that the server can do consists of: what it tells the client of itself, and the requests it answers.
import type { ClientCapabilities, ServerCapabilities } from "vscode-languageserver";
import type { Session } from "./session.ts";
import type { Say } from "./words.ts";

export interface Feature {
  readonly capabilities: (client: ClientCapabilities) => Partial<ServerCapabilities>;
  /** Registers its handlers on the session's connection. `say` gives what a reader is told beside findings. */
  readonly start: (session: Session, say: Say) => void;
}

// Shows places that the server names, as the editor shows references: a peek at each from where the reader is.
import { commands, Location, Position, Range, Uri } from "vscode";
import type { PlacesArguments } from "../../language/server/protocol.ts";

/** @param given of a code lens `PlacesArguments` */
export async function showPlaces({ uri, at, places }: PlacesArguments): Promise<void> {
  const locations = places.map(
    ({ uri: of, range: { start, end } }) =>
      new Location(Uri.parse(of), new Range(start.line, start.character, end.line, end.character)),
  );
  await commands.executeCommand(
    "editor.action.showReferences",
    Uri.parse(uri),
    new Position(at.line, at.character),
    locations,
  );
}

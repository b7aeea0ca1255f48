// What can be the address of a file, as clients give it. Knows no folder.
import { URI } from "langium";
import { ErrorCodes, ResponseError } from "vscode-languageserver";

/** Whether the text is the URI of a file. */
export function isAddress(text: string): boolean {
  try {
    return URI.parse(text, true).path !== "";
  } catch {
    return false;
  }
}

/** @throws ResponseError where it is none, in words for whoever made the request */
export function mustBeAddress(text: string): void {
  if (!isAddress(text))
    throw new ResponseError(
      ErrorCodes.InvalidParams,
      `“${text}” is not the URI of a file. Give one with its scheme, such as file:///shop/pump.sprag.`,
    );
}

// Requests to the server with the types of the protocol. Knows no feature.
import type { CancellationToken } from "vscode";
import type { AskedOfServer } from "../../language/server/protocol.ts";
import type { ServerRun } from "./server-run.ts";

/** Sends one request and gives its answer; throws what the server or the connection throws. */
export async function ask<Name extends keyof AskedOfServer>(
  run: ServerRun,
  name: Name,
  params: AskedOfServer[Name]["params"],
  token?: CancellationToken,
): Promise<AskedOfServer[Name]["result"]> {
  const client = await run.client();
  // An undefined token would be sent along as a second parameter.
  return token === undefined ? client.sendRequest(name, params) : client.sendRequest(name, params, token);
}

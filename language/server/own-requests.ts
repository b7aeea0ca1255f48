// Requests beside the standard protocol: whoever asks one wrongly hears what it is to be asked with, and nothing is thrown.
// Knows what each takes, and no answer.
import { type CancellationToken, type Connection, ErrorCodes, ResponseError } from "vscode-languageserver";
import { isAddress } from "./address.ts";
import type { AskedOfServer } from "./protocol.ts";

type Name = keyof AskedOfServer;

/** Registers what answers a request of ours; it is only asked with parameters of the protocol's shape. */
export function answerOwn<Asked extends Name>(
  connection: Connection,
  name: Asked,
  reply: (
    params: AskedOfServer[Asked]["params"],
    token: CancellationToken,
  ) => AskedOfServer[Asked]["result"] | Promise<AskedOfServer[Asked]["result"]>,
): void {
  // Of a request without parameters the token is all that comes; of one with a list, its items come one by one.
  connection.onRequest(name, async (...given: unknown[]): Promise<unknown> => {
    const token = given[given.length - 1] as CancellationToken;
    const params = given.length > 1 ? given[0] : undefined;
    const wrong = wrongIn(params, FIELDS[name]);
    if (wrong !== null) throw new ResponseError(ErrorCodes.InvalidParams, `${name}: ${wrong}`);
    return reply((params ?? {}) as AskedOfServer[Asked]["params"], token);
  });
}

interface Field {
  readonly fits: (value: unknown) => boolean;
  /** Behind “is to be”. */
  readonly words: string;
}

const TEXT: Field = { fits: (value) => typeof value === "string", words: "a text" };
const SWITCH: Field = { fits: (value) => typeof value === "boolean", words: "true or false" };
const ADDRESS: Field = { fits: (value) => typeof value === "string" && isAddress(value), words: "the URI of a file" };
const CHOICES: Field = {
  fits: (value) => isObject(value) && Object.values(value).every((choice) => typeof choice === "string"),
  words: "an object from options to choices",
};

const OLD_TEXTS: Field = {
  fits: (value) => Array.isArray(value) && value.every(isOldText),
  words: "a list of files with their older texts",
};

function isOldText(value: unknown): boolean {
  if (!isObject(value)) return false;
  return ADDRESS.fits(value.uri) && (value.text === null || TEXT.fits(value.text));
}

function oneOf(...words: readonly string[]): Field {
  return { fits: (value) => words.includes(value as string), words: `one of ${words.join(", ")}` };
}

function optional({ fits, words }: Field): Field {
  return { fits: (value) => value === undefined || value === null || fits(value), words: `${words}, or left out` };
}

/** A field that the protocol gains and that is not here is a type error. */
const FIELDS: { readonly [Asked in Name]: { readonly [Key in keyof AskedOfServer[Asked]["params"]]-?: Field } } = {
  "sprag/outputs": { uri: ADDRESS },
  "sprag/export": {
    uri: ADDRESS,
    procedure: optional(TEXT),
    as: TEXT,
    format: TEXT,
    units: oneOf("si", "us", "both"),
    repeats: oneOf("compact", "full"),
    draft: SWITCH,
    language: optional(TEXT),
    set: optional(CHOICES),
  },
  "sprag/preview": {
    uri: ADDRESS,
    procedure: optional(TEXT),
    as: TEXT,
    units: oneOf("si", "us", "both"),
    repeats: oneOf("compact", "full"),
    language: optional(TEXT),
    set: optional(CHOICES),
    checked: SWITCH,
  },
  "sprag/review": { uri: ADDRESS, old: OLD_TEXTS },
  "sprag/rule": { code: TEXT },
  "sprag/starter": {},
  "sprag/atRest": {},
  "sprag/checkFolders": {},
};

/** Null where all is as it is to be. */
function wrongIn(params: unknown, fields: Readonly<Record<string, Field>>): string | null {
  const given = isObject(params) ? params : {};
  for (const [name, { fits, words }] of Object.entries(fields))
    if (!fits(given[name])) return `“${name}” is to be ${words}.`;
  return null;
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

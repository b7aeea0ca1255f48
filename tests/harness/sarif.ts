// Holds a SARIF log against the schema of the standard. Knows no Sprag.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { Ajv } from "ajv";

/** Of OASIS, revision rtm.5, as the package carries it. */
const SCHEMA = createRequire(import.meta.url).resolve("@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json");

// It names draft 4, of which it uses nothing that reads otherwise today but its name.
const { $schema: _, id: __, ...schema } = JSON.parse(readFileSync(SCHEMA, "utf8"));
const validate = new Ajv({ allErrors: true, strict: false, unicodeRegExp: false, validateFormats: false }).compile(
  schema,
);

/** What of a log the standard does not allow; empty where all of it is in order. */
export function sarifTroubles(log: unknown): readonly string[] {
  validate(log);
  return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}

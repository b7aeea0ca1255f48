// What the extension says of itself is so: commands, settings, files, the editors it runs in, and how it reads words.
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { plainTexts } from "#harness/samples.ts";
import type { ClientCommand, Settings } from "#server/protocol.ts";

const root = join(import.meta.dirname, "..", "..");
const extension = join(root, "extension");
const json = <Shape>(...path: string[]): Shape => JSON.parse(readFileSync(join(...path), "utf8")) as Shape;

interface Manifest {
  readonly engines: { readonly vscode: string };
  readonly main: string;
  readonly browser: string;
  readonly icon: string;
  readonly activationEvents: readonly string[];
  readonly capabilities: Readonly<Record<string, { readonly supported: boolean }>>;
  readonly contributes: {
    readonly languages: readonly { readonly configuration: string; readonly icon: Readonly<Record<string, string>> }[];
    readonly grammars: readonly { readonly path: string }[];
    readonly commands: readonly { readonly command: string }[];
    readonly configuration: { readonly properties: Readonly<Record<string, { readonly default: unknown }>> };
  };
}

const manifest = json<Manifest>(extension, "package.json");
const { contributes } = manifest;

test("each command is there for the reader, and does something", () => {
  const client = readdirSync(join(extension, "client"), { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .map((name) => readFileSync(join(extension, "client", name), "utf8"))
    .join("\n");
  const registered = [...client.matchAll(/registerCommand\("([\w.]+)"/g)].map(([, id]) => id).sort();
  // What only a lens or a view can ask for, with the places it knows, is in no menu and no palette.
  const ofPlaces = ["sprag.showPlaces", "sprag.openChange"];
  expect(registered).toEqual([...contributes.commands.map(({ command }) => command), ...ofPlaces].sort());
  const namedByServer: Readonly<Record<ClientCommand, true>> = {
    "sprag.export": true,
    "sprag.showPlaces": true,
    "sprag.showRule": true,
    "sprag.showProblems": true,
  };
  expect(registered).toEqual(expect.arrayContaining(Object.keys(namedByServer)));
});

test("the settings are those that the server asks for", () => {
  const asked: Settings = {
    inlayHints: { stepNumbers: true, otherUnits: true, repeats: true, settings: true },
    units: "both",
    checkFolder: true,
    crib: "",
  };
  const { inlayHints, ...others } = asked;
  const flat = {
    ...Object.fromEntries(Object.entries(inlayHints).map(([name, value]) => [`sprag.inlayHints.${name}`, value])),
    ...Object.fromEntries(Object.entries(others).map(([name, value]) => [`sprag.${name}`, value])),
  };
  const given = Object.entries(contributes.configuration.properties).map(([name, setting]) => [name, setting.default]);
  expect(Object.fromEntries(given)).toEqual(flat);
});

test("it runs in the oldest editor it names, in untrusted and in virtual folders", () => {
  const oldest = /^\^(1\.\d+)\.0$/.exec(manifest.engines.vscode)?.[1];
  const types = json<{ version: string }>(root, "node_modules", "@types", "vscode", "package.json").version;
  expect(types.startsWith(`${oldest}.`)).toBe(true);
  expect(manifest.capabilities).toEqual({
    untrustedWorkspaces: { supported: true },
    virtualWorkspaces: { supported: true },
  });
  expect(manifest.activationEvents).toEqual([
    "onLanguage:sprag",
    "workspaceContains:**/*.sprag",
    "onWebviewPanel:sprag.preview",
  ]);
});

test("what it names is there, and is packed", () => {
  const [language] = contributes.languages;
  const named = [
    manifest.icon,
    language?.configuration ?? "",
    ...Object.values(language?.icon ?? {}),
    ...contributes.grammars.map(({ path }) => path),
  ].map((path) => path.replace(/^\.\//, ""));
  expect(named.filter((path) => !existsSync(join(extension, path)))).toEqual([]);
  const vsce = join(root, "node_modules", "@vscode", "vsce", "vsce");
  const { stdout } = spawnSync(process.execPath, [vsce, "ls", "--no-dependencies"], {
    cwd: extension,
    encoding: "utf8",
  });
  const packed = stdout.trim().split("\n");
  expect(packed).toEqual(expect.arrayContaining([...named, "l10n/bundle.l10n.json", "l10n/bundle.l10n.de.json"]));
  // A module in dist/ is the server or a part of it; elsewhere it makes something.
  expect(packed.filter((path) => /^(?!dist\/).*\.mjs$|\.(?:ts|map|vsix)$|node_modules|client\//.test(path))).toEqual(
    [],
  );
});

interface Pattern {
  readonly pattern: string;
  readonly flags?: string;
}

interface LanguageConfiguration {
  readonly wordPattern: Pattern;
  readonly indentationRules: { readonly increaseIndentPattern: Pattern; readonly decreaseIndentPattern: Pattern };
}

const language = json<LanguageConfiguration>(extension, "language-configuration.json");
const regexp = ({ pattern, flags = "" }: Pattern, more = ""): RegExp => new RegExp(pattern, flags + more);

test("a double click takes a whole name or number", () => {
  const words = 'part Öl_2 "thread oil" { mass 0.5 kg }'.match(regexp(language.wordPattern, "g"));
  expect(words).toEqual(["part", "Öl_2", "thread", "oil", "mass", "0.5", "kg"]);
});

test("the next line is indented as the formatter does it, in all samples", () => {
  const deeper = regexp(language.indentationRules.increaseIndentPattern);
  const back = regexp(language.indentationRules.decreaseIndentPattern);
  const lines = [...plainTexts].filter(([path]) => !path.includes("/")).flatMap(([, text]) => text.split("\n"));
  const wrong: string[] = [];
  for (const [at, line] of lines.entries()) {
    const next = lines[at + 1] ?? "";
    if (line.trim() === "" || next.trim() === "") continue;
    const indent = (text: string): number => text.length - text.trimStart().length;
    // A line broken by its writer goes in as well; only braces are looked at.
    const opens = /\{\s*$/.test(line);
    if (opens !== deeper.test(line)) wrong.push(line);
    if (opens && indent(next) !== indent(line) + 2) wrong.push(next);
    if (/^\s*\}/.test(next) !== back.test(next)) wrong.push(next);
  }
  expect(lines.length).toBeGreaterThan(300);
  expect(wrong).toEqual([]);
});

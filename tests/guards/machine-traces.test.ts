// Nothing in the repository names a registry's host or a path of the machine it was written on.
import { expect, test } from "vitest";
import { allFiles, type SourceFile } from "./source-files.ts";

/** Put together from parts, so that this file does not find itself. */
const traces: readonly { readonly what: string; readonly pattern: RegExp }[] = [
  {
    what: "a registry's host",
    pattern: new RegExp(`\\b${"regis"}try\\.[a-z0-9-]+\\.[a-z]{2,}|\\bnpm\\.${"pkg"}\\.`, "i"),
  },
  {
    what: "a path of one machine",
    pattern: new RegExp(`(?<![\\w.\\-/$}~])/(?:${["work", "root", "farm"].join("|")}|(?:home|Users)/[\\w.-]+)/[\\w.-]`),
  },
  { what: "a path of one machine", pattern: new RegExp(`\\b[A-Z]:\\\\${"Users"}\\\\`) },
];

test("no file names a registry or a machine's path", () => {
  expect(allFiles.length).toBeGreaterThan(10);
  expect(allFiles.flatMap(complaints)).toEqual([]);
});

test("the lock file says what each package must hash to, and no place it comes from", () => {
  const lock = allFiles.find(({ path }) => path === "package-lock.json");
  expect(lock).toBeDefined();
  expect(lockComplaints(lock?.text ?? "{}")).toEqual([]);
});

test.each([
  ["a registry", `see ${["https://regis", "try.npmjs.org/sprag"].join("")}`],
  ["a home folder", `open("${["", "home", "ann", "sprag"].join("/")}")`],
  ["a work folder", `cd ${["", "work", "main"].join("/")}`],
  ["a Windows home folder", `cd ${["C:", "Users", "ann"].join("\\")}`],
])("says so: %s", (_title, text) => {
  expect(complaints({ path: "tests/a.ts", text })).toHaveLength(1);
});

test("is silent: paths of a system and of the project", () => {
  const text = "/usr/bin/chromium and samples/work/gear.sprag and the shop's work/rest plan and ./root/a.ts";
  expect(complaints({ path: "tests/a.ts", text })).toEqual([]);
});

test("says so: a lock file with a host in it, and one without a hash", () => {
  const packages = {
    "node_modules/a": { version: "1.0.0", resolved: "https://example.org/a.tgz", integrity: "sha512-x" },
    "node_modules/b": { version: "1.0.0" },
    "node_modules/sprag": { resolved: "language", link: true },
  };
  expect(lockComplaints(JSON.stringify({ packages }))).toEqual([
    "node_modules/a: names the place it comes from",
    "node_modules/b: has no hash",
  ]);
});

function complaints({ path, text }: SourceFile): string[] {
  return traces.flatMap(({ what, pattern }) => {
    const match = pattern.exec(text);
    return match === null ? [] : [`${path}: ${what}: ${match[0]}`];
  });
}

interface LockEntry {
  readonly resolved?: string;
  readonly integrity?: string;
  readonly link?: boolean;
}

function lockComplaints(text: string): string[] {
  const { packages = {} } = JSON.parse(text) as { packages?: Record<string, LockEntry> };
  return Object.entries(packages).flatMap(([path, { resolved, integrity, link }]) => {
    if (!path.includes("node_modules/") || link === true) return [];
    return [
      ...(resolved === undefined ? [] : [`${path}: names the place it comes from`]),
      ...(integrity === undefined ? [`${path}: has no hash`] : []),
    ];
  });
}

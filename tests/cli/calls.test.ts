// Calls as such: help, version, the day of the work, and what is said of a call that no command understands.
import { describe, expect, test } from "vitest";
import { definitionsFor } from "#cli/commands.ts";
import { run } from "#cli/program.ts";
import { dateOf, type Stream, type Surroundings } from "#cli/surroundings.ts";
import { folderWith } from "#harness/command.ts";
import about from "../../language/package.json" with { type: "json" };

const COMMANDS = [
  "check",
  "merge",
  "export",
  "review",
  "format",
  "explain",
  "convert",
  "new",
  "arrange",
  "verify",
  "outline",
  "serve",
];

describe("help", () => {
  test("lists the commands and the exit statuses, with examples", () => {
    const { status, out, err } = folderWith().sprag("--help");
    expect({ status, err }).toEqual({ status: 0, err: "" });
    expect([...out.matchAll(/^ {2}([a-z]+) {2,}/gm)].map(([, name]) => name)).toEqual(COMMANDS);
    expect(out).toContain("Exit status: 0");
    expect(out).toContain("Examples:\n  sprag new my-shop");
  });

  test.each(COMMANDS.map((name) => [name]))("of %s has examples", (name) => {
    const { status, out } = folderWith().sprag(name, "--help");
    expect(status).toBe(0);
    expect(out).toMatch(new RegExp(`^Usage: sprag ${name}`));
    expect(out).toMatch(new RegExp(`Examples?:\n  sprag ${name}`));
  });

  test("goes to standard error where nothing was asked for", () => {
    const { status, out, err } = folderWith().sprag();
    expect({ status, out }).toEqual({ status: 2, out: "" });
    expect(err).toMatch(/^Usage: sprag[\s\S]*\nsprag: give a command\.\n$/);
  });
});

test("--version prints the version of the package", () => {
  expect(folderWith().sprag("--version")).toEqual({ status: 0, out: `${about.version}\n`, err: "" });
});

test.each([
  [["chek", "a"], "no command is called “chek”. Nearest: check. See sprag --help."],
  [["print"], `no command is called “print”. There are: ${COMMANDS.join(", ")}. See sprag --help.`],
  [["--colour"], "sprag has no option --colour. There are: --version, --help. See sprag --help."],
  [["check"], "sprag check wants PATH behind it. See sprag check --help."],
  [["check", "--fromat", "json"], "sprag check has no option --fromat. Nearest: --format. See sprag check --help."],
  [["check", ".", "--format"], "--format wants a value behind it. See sprag check --help."],
  [["check", ".", "--format", "yaml"], "--format cannot be “yaml”. There are: text, json, sarif, junit."],
  [["check", ".", "--fail-on", "hint"], "--fail-on cannot be “hint”. There are: error, warning, information."],
  [["check", ".", "--jobs", "0"], "--jobs takes a whole number from 1 to 64; “0” is not so."],
  [["check", ".", "--jobs", "1.5"], "--jobs takes a whole number from 1 to 64; “1.5” is not so."],
  [["check", ".", "--jobs", "65"], "--jobs takes a whole number from 1 to 64; “65” is not so."],
  [["merge"], "sprag merge wants FILE behind it. See sprag merge --help."],
  [["check", ".", "-x"], "sprag check has no option -x."],
  [["export", "a.sprag", "b.sprag"], "sprag export has more words behind it than it takes. See sprag export --help."],
  [["new"], "sprag new wants FOLDER behind it. See sprag new --help."],
  [["explain", "a", "b"], "sprag explain has more words behind it than it takes. See sprag explain --help."],
  [["convert"], "sprag convert wants WORDS behind it. See sprag convert --help."],
  [["verify", "record.json"], "sprag verify wants --for FILE. See sprag verify --help."],
])("%j is refused in one line, status 2", (args, message) => {
  const { status, out, err } = folderWith().sprag(...args);
  expect({ status, out }).toEqual({ status: 2, out: "" });
  expect(err.startsWith(`sprag: ${message}`) ? message : err).toBe(message);
  expect(err.match(/\n/g)).toHaveLength(1);
});

test.each([
  ["the one given", "2026-05-04", { SOURCE_DATE_EPOCH: "0" }, "2026-05-04"],
  ["else the one a repeated build asks for", undefined, { SOURCE_DATE_EPOCH: "1767225600" }, "2026-01-01"],
  ["else today's", undefined, {}, "2030-12-31"],
  ["today's also where that makes no sense", undefined, { SOURCE_DATE_EPOCH: "soon" }, "2030-12-31"],
])("the day of the work is %s", (_title, given, env, day) => {
  // 1767225600 is 2026-01-01T00:00:00Z (date -u -d @1767225600, GNU coreutils).
  const now = () => new Date("2030-12-31T12:00:00Z");
  expect(dateOf(given, { ...nowhere, env, now })).toBe(day);
});

const silent: Stream = { write: () => {}, isTerminal: false, columns: null };
const nowhere: Surroundings = {
  cwd: "",
  env: {},
  out: silent,
  err: silent,
  now: () => new Date(0),
  asset: () => Promise.reject(new Error("none here")),
  serve: () => {},
};

test("a fault of the program itself is told as one, status 2", async () => {
  let told = "";
  const broken: Stream = {
    ...silent,
    write: () => {
      throw new Error("a bug");
    },
  };
  const err: Stream = {
    ...silent,
    write: (text) => {
      told += text;
    },
  };
  const definitions = await definitionsFor(["explain"]);
  expect(run(["explain"], { ...nowhere, out: broken, err }, definitions)).toBe(2);
  expect(told).toMatch(/^sprag: stopped by a fault of its own\. Please report these lines:\nError: a bug\n +at /);
});

test("a call loads the sub-command that it names, and no other", async () => {
  expect([...(await definitionsFor(["--help", "check", "a.sprag"])).keys()]).toEqual(["check"]);
  expect([...(await definitionsFor(["--version"])).keys()]).toEqual([]);
  expect([...(await definitionsFor(COMMANDS)).keys()]).toEqual(COMMANDS);
});

test("serve starts the server, and says on a terminal what it waits for", () => {
  expect(folderWith().sprag("serve", "--stdio")).toEqual({ status: 0, out: "(serving)", err: "" });
  const { err } = folderWith().spragAs({ isTerminal: true }, "serve");
  expect(err).toContain("waiting for an editor");
});

// What the pointer shows: values in both unit systems, things with their state before and after, verbs, codes, words.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import type { Hover, MarkupContent, Position } from "vscode-languageserver-protocol/node";
import { type Editor, withEditor } from "#harness/editor.ts";
import { askEverywhere, roughTexts } from "#harness/everywhere.ts";
import { ACTIONS, LINES } from "#server/hover/words.ts";
import { convertText } from "#workspace/index.ts";

const SHOP = `source Manual "pump manual" revision "9"
option Extent "extent of work" { Full "full overhaul"  Reseal "reseal only" }
energy MotorSupply "motor supply" { voltage 400 V AC }
ring Circle "bolt circle" { count 4  numbered clockwise seen from "drive end"  position 1 at 12 o'clock }
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
part Rotor "rotor" { driven by MotorSupply }
part Cover "bearing cover" { mass 9 kg  encloses Rotor }
part Screw[1..4] "cover screw" { seats in Circle by number  secures Cover  torque 45 ± 2 N·m }
value Final = 45 ± 2 N·m
`;

const procedure = (lines: string): string =>
  `${SHOP}procedure Open "Open the housing" {\n  begin with Cover is secured\n${lines}\n}\n`;

async function shown(editor: Editor, text: string): Promise<readonly (string | null)[]> {
  const { uri, cursors } = await editor.open("open.sprag", text);
  const found: (string | null)[] = [];
  for (const position of cursors) {
    const answer = await editor.connection.sendRequest<Hover | null>("textDocument/hover", {
      textDocument: { uri },
      position,
    });
    found.push(answer === null ? null : (answer.contents as MarkupContent).value);
  }
  return found;
}

async function shownAt(text: string): Promise<string> {
  return withEditor({}, async (editor) => (await shown(editor, text))[0] ?? "");
}

/** The state's lines of a hover. */
async function stateAt(lines: string): Promise<readonly string[]> {
  const text = await shownAt(procedure(lines));
  const at = text.search(/Before and after|never reached/);
  return at < 0
    ? []
    : text
        .slice(at)
        .replaceAll("\\", "")
        .split("\n")
        .filter((line) => line !== "")
        .slice(1);
}

describe("values", () => {
  test("a band is shown as `convert` converts it, rounded inwards", async () => {
    const converted = convertText("45 ± 2 N·m", "lbf·ft");
    const inwards = converted.ok ? converted.readings.find(({ kind }) => kind === "torque")?.inwards : null;
    const text = await shownAt(procedure("  step tighten Screw[all] to 45 ±<|> 2 N·m with Wrench"));
    expect(inwards).toMatch(/lbf·ft$/);
    expect(text).toContain("45 ± 2 N·m");
    expect(text).toContain("(torque)");
    expect(text).toContain(`${inwards}, rounded inwards`);
  });
  test("a band that tells what occurs is rounded outwards", async () => {
    const text = await shownAt('part A "a" { mass 1 kg }\npart B "b"\nfit A over B { interference 1<|>1 .. 36 µm }\n');
    // 11 µm is 0.000433 in, 36 µm is 0.001417 in (1 in = 25.4 mm, exact).
    expect(text).toContain("rounded outwards");
    expect(text).toMatch(/0\.00043 \.\. 0\.00142 in/);
  });
  test("a time has one system only", async () => {
    const text = await shownAt(procedure("  step wait 1<|>0 min"));
    expect(text).toContain("10 min");
    expect(text).not.toContain("≈");
  });
  test("a reader of one system is spared the other", async () => {
    const text = procedure("  step tighten Screw[all] to 4<|>5 N·m with Wrench");
    const forUnits = (units: string): Promise<readonly (string | null)[]> =>
      withEditor({ settings: { units } }, async (editor) => {
        await editor.atRest();
        return shown(editor, text);
      });
    expect((await forUnits("si"))[0]).not.toContain("lbf");
    expect((await forUnits("us"))[0]).toContain("lbf·ft");
  });
});

describe("state before and after", () => {
  test("of the part that a line works on", async () => {
    expect(await stateAt("  step loosen Screw[all]\n  step remove Sc<|>rew[1]")).toEqual([
      "- Screw[1]: installed, loose → removed",
    ]);
  });
  test("instances of which the same can be said are one line", async () => {
    expect(await stateAt("  step loosen Scr<|>ew[all]")).toEqual([
      "- Screw[1], Screw[2], Screw[3] and 1 more: installed, tightened → installed, loose",
    ]);
  });
  test("with the value it was tightened to", async () => {
    const lines = "  step tighten Screw[2] to 45 ± 2 N·m with Wrench\n  step loosen Scr<|>ew[2]";
    expect(await stateAt(lines)).toEqual(["- Screw[2]: installed, tightened at 45 ± 2 N·m → installed, loose"]);
  });
  test("by the choice it depends on", async () => {
    const lines = `  step loosen Screw[all]
  when Extent is Full { step remove Screw[all]  step remove Cover }
  step inspect Co<|>ver`;
    expect(await stateAt(lines)).toEqual([
      "- installed where Extent is Reseal; removed where Extent is Full, and stays so",
    ]);
  });
  test("by the pass of a repeat", async () => {
    const lines = "  step loosen Screw[all]\n  repeat n in 1, 3 { step remove Sc<|>rew[n] }";
    expect(await stateAt(lines)).toEqual(["- Screw[1] (n = 1), Screw[3] (n = 3): installed, loose → removed"]);
  });
  test("of something that a whole step only speaks of", async () => {
    const lines = "  step { needs Co<|>ver is installed  loosen Screw[all]  remove Screw[all]  remove Cover }";
    expect(await stateAt(lines)).toEqual(["- installed → removed"]);
  });
  test("in any order", async () => {
    const lines = `  step loosen Screw[all]
  step remove Screw[all]
  in any order {
    step remove Cover
    step { inspect Rotor  do "look at the cover" }
  }
  step inspect Co<|>ver`;
    expect(await stateAt(lines)).toEqual(["- removed, and stays so"]);
  });
  test("of an energy", async () => {
    expect(await stateAt("  step isolate MotorS<|>upply")).toEqual(["- live → isolated"]);
  });
  test("in a performed procedure, as it begins by itself", async () => {
    const text = `${SHOP}procedure Inner "inner" {
  begin with Cover is installed
  step lift Co<|>ver by hand
}
procedure Outer "outer" { perform Inner }
`;
    expect(await shownAt(text)).toContain("- installed, and stays so");
  });
  test("behind a line that could not be read", async () => {
    expect(await stateAt("  step loosen Screw[all] blah\n  step remove Scr<|>ew[1]")).toEqual([
      "- Screw[1]: installed, tight or loose not known → removed",
    ]);
  });
  test("where nobody ever comes", async () => {
    const text = await shownAt(procedure('  stop "enough"\n  step loosen Scr<|>ew[1]'));
    expect(text).toContain("never reached");
  });
  test("a tool has none", async () => {
    const text = await shownAt(procedure("  step tighten Screw[1] to 45 N·m with Wre<|>nch"));
    expect(text).toContain("torque wrench");
    expect(text).toContain("8 .. 60 N·m");
    expect(text).not.toContain("Before and after");
  });
});

describe("what a name means", () => {
  test.each([
    [
      "an option",
      "  when Ext<|>ent is Full { step inspect Cover }",
      /extent of work.*— option[\s\S]*Reseal: reseal only/,
    ],
    ["a choice", "  when Extent is Fu<|>ll { step inspect Cover }", /full overhaul.*— a choice of Extent/],
    ["a source", '  step inspect Cover per Man<|>ual "2"', /pump manual.*— source[\s\S]*revision 9/],
    ["a hazard", '  warning cru<|>sh "x" step inspect Cover', /crush.*for people/],
    ["a hazard for equipment", '  caution deb<|>ris "x" step inspect Cover', /for equipment/],
    ["a value", "  step tighten Screw[1] to Fin<|>al with Wrench", /— value[\s\S]*45 ± 2 N·m/],
    [
      "a step",
      '  step One "First." { inspect Cover takes 2 min }\n  step { inspect Cover after On<|>e }',
      /Step 1.*First\.[\s\S]*2 min/,
    ],
    ["a ring", "  step turn Cir<|>cle[1] to 3 o'clock", /bolt circle[\s\S]*count 4/],
  ])("%s", async (_, lines, expected) => {
    expect(await shownAt(procedure(lines))).toMatch(expected);
  });
  test("a performed procedure: its steps, what it begins and finishes with", async () => {
    const text = `${SHOP}procedure Inner "the inner work" {
  begin with Cover is installed
  finish with Cover is removed
  step remove Cover
}
procedure Outer "outer" { perform Inn<|>er }
`;
    const said = await shownAt(text);
    expect(said).toMatch(
      /the inner work[\s\S]*1 step[\s\S]*begin with Cover is installed[\s\S]*finish with Cover is removed/,
    );
  });
  test("a name that nothing bears says nothing", async () => {
    expect(await shownAt(procedure("  step remove Nob<|>ody"))).toBe("");
  });
});

describe("words of the language", () => {
  test("a verb: what it needs and does", async () => {
    const text = await shownAt(procedure("  step loo<|>sen Screw[1]"));
    expect(text).toMatch(/Needs: P is in and tightened[\s\S]*Does: P is loose/);
  });
  test("a code that is allowed: its page", async () => {
    const text = await shownAt(
      procedure('  step { inspect Rotor  allow order.encl<|>osed because "seen through the port" }'),
    );
    expect(text).toMatch(/^# order\.enclosed/);
  });
  test("a code that no rule has: the nearest", async () => {
    const text = await shownAt(procedure('  step { inspect Cover  allow order.enc<|>losd because "x" }'));
    expect(text).toContain("order.enclosed");
  });
  test("a keyword: one line", async () => {
    expect(await shownAt(procedure("  step { inspect Cover  criti<|>cal }"))).toContain("grave");
  });
  test("an empty place says nothing", async () => {
    expect(await shownAt("\n<|>\n")).toBe("");
  });

  const guide = readFileSync(join(import.meta.dirname, "..", "..", "language", "GUIDE.md"), "utf8");
  const rows = guide
    .split("\n")
    .filter((line) => line.startsWith("| `"))
    .map((line) => line.split("|").map((cell) => cell.trim()))
    .map(([, verbs = "", needs = "", does = ""]) => ({
      verbs: [...verbs.matchAll(/`(\w+)/g)].map(([, verb = ""]) => verb),
      needs,
      does,
    }));
  test.each(Object.entries(ACTIONS))("the guide says the same of %s", (verb, { needs, does }) => {
    const same = rows.filter((row) => row.verbs.includes(verb) && row.needs.startsWith(needs) && row.does === does);
    expect(same.length).toBeGreaterThan(0);
  });
  test("every statement has its line", () => {
    const starters = [
      "task",
      "step",
      "repeat",
      "when",
      "check",
      "sign",
      "takes",
      "per",
      "allow",
      "part",
      "use",
      "crib",
    ];
    expect(starters.filter((word) => LINES[word] === undefined)).toEqual([]);
  });
  test.each([
    ["in <|>any order { step inspect A }", "**in any order** — Each of these is done whole"],
    ["in any or<|>der { step inspect A }", "**in any order** — Each of these is done whole"],
    ["step { in any order { inspect A } takes 3 <|>min }", "**3 min** (time)"],
    ["repeat n fr<|>om 1 to 2 { step inspect A }", ""],
    ["step loosen A in reverse or<|>der", ""],
  ])("in %s", async (line, said) => {
    const text = await shownAt(`part A "a"\nprocedure P "p" {\n  ${line}\n}\n`);
    if (said === "") expect(text).not.toMatch(/table|tightened\.$/);
    else expect(text).toContain(said);
  });
  test.each([
    ['tool W "w" { ar<|>m 400 mm }', "**arm** — From the square drive to the middle of the grip."],
    ['part A "a" { he<|>at limit 90 °C }', "**heat** — The temperature that it must not pass."],
    ['holes H "h" { count 4  or<|>der 1, 4, 2, 3 }', "**order** — In which order its places are tightened."],
    ['ring R "r" { count 4  fi<|>ll clockwise }', "**fill** — Which way round its positions are filled."],
    ['energy E "e" { pressure 8 bar  sto<|>red 2 kJ }', "**stored** — How much is left in it when it is isolated"],
  ])("of a declaration: %s", async (text, said) => {
    expect(await shownAt(`${text}\n`)).toContain(said);
  });
});

describe("whatever stands there", () => {
  const HOSTILE =
    `[click](command:x) <img src=x onerror=y> **b** \`c\` $(gear) a@b.cc http://x.test www.x.test | # "`.replace(
      '"',
      "'",
    );
  test("a title is no markup", async () => {
    const text = await shownAt(`part Cov<|>er "${HOSTILE}"\n`);
    expect(text).toContain("Cover");
    expect(text).not.toMatch(/(?<!\\)[<`[]|(?<!\\)\]\(|\$\(|@|[a-z]:\/\/|www\.x/);
  });
  test("a client that takes no Markdown gets none", () =>
    withEditor({ capabilities: { textDocument: { hover: { contentFormat: ["plaintext"] } } } }, async (editor) => {
      const [text] = await shown(editor, `part Cov<|>er "cover *1* (left)"\n`);
      expect(text).toBe("cover *1* (left) — part Cover");
    }));
  test.each(roughTexts(SHOP, procedure))("it answers at every place, with what the cursor is on: %s", (_, text) =>
    withEditor({}, async (editor) => {
      const answers = await askEverywhere<Hover | null>(editor, "textDocument/hover", text);
      expect(answers.length).toBeGreaterThan(0);
      for (const { position, answer } of answers) {
        if (answer === null) continue;
        expect((answer.contents as MarkupContent).value).toMatch(/\S/);
        const { start, end } = answer.range ?? { start: position, end: position };
        expect(compare(start, position)).toBeLessThanOrEqual(0);
        expect(compare(end, position)).toBeGreaterThanOrEqual(0);
      }
    }),
  );
});

function compare(a: Position, b: Position): number {
  return a.line - b.line || a.character - b.character;
}

/* ISO 21940-11 with G 6.3 at 1500 rpm: U = 9549·6.3·m/n in g·mm, kg and rpm (second): 64.17 g·mm for 1.6 kg. */
test("an arrangement: what it is bound to, what its parts weigh and leave, and how that came about", async () => {
  const table = "position,serial,mass\n1,A,800 g\n2,B,801 g\n";
  const text = `ring R { count 2  numbered clockwise seen from "above"  position 1 at 12 o'clock }
part S[1..2] "segment" { seats in R by number }
arrangement Or<|>der of S in R { radius 60 mm  grade "G6.3"  speed 1500 rpm  mass 1.6 kg  from "t.csv" }
`;
  const said = await withEditor({ files: { "t.csv": table } }, async (editor) => (await shown(editor, text))[0] ?? "");
  const lines = said.replaceAll("\\", "").split("\n");
  for (const line of [
    "- radius 60 mm (2.36 in)",
    "- grade G6.3",
    "- speed 1500 rpm",
    "- parts together 1601 g (3.530 lb)",
    "- residual unbalance 60.00 g·mm (0.08333 oz·in)",
    "- permitted by the grade at most 64.1 g·mm (at most 0.0891 oz·in)",
    "Order: residual unbalance U = 60.00 g·mm",
    "Order: permissible unbalance U = at most 64.1 g·mm",
    "           n = 1500 rpm, speed",
  ])
    expect(lines).toContain(line);
});

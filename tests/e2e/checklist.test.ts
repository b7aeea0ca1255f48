// The HTML checklist filled in as a fitter does, in a real browser: order, reload, hold point, readings, rework, the saved record,
// keyboard alone, screen readers' needs, paper.
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { exportText } from "#harness/export.ts";
import { openSamples } from "#harness/samples.ts";
import { verify, type Workspace, withFigures } from "#workspace/index.ts";
import { make } from "../outputs/make.ts";
import { openShelf, type Sheet, type Shelf, savedBy, violations } from "./checklist-page.ts";

const root = join(import.meta.dirname, "..", "..");
const PATH = "hot-bearing-fit.sprag";
const FIGURE = "figures/cover-circle.svg";

let shelf: Shelf;
let workspace: Workspace;
beforeAll(async () => {
  shelf = await openShelf();
  workspace = withFigures(openSamples(), new Map([[FIGURE, readFileSync(join(root, "samples", FIGURE))]]));
});
afterAll(() => shelf.close());

const checklist = (repeats: "compact" | "full" = "compact"): string =>
  exportText(workspace, { path: PATH, as: "checklist", format: "html", units: "both", repeats, draft: false });

/** Up to the check of the gap. */
async function heated(sheet: Sheet): Promise<void> {
  await sheet.name("A. Moran", "4711");
  for (const id of ["start:1", "start:2", "1.1:1", "1.3:1", "1.2:1", "1.4:1", "2.1:1"]) await sheet.tick(id);
  await sheet.read("2.1:record-1", "110");
  for (const id of ["2.2:1", "2.3:1"]) await sheet.tick(id);
}

/** From the check of the gap to the hold point. */
async function seated(sheet: Sheet, gap = "0,02"): Promise<void> {
  await sheet.read("2.4:1", gap);
  await sheet.sign("2.4:sign-1", "A. Moran", "4711");
}

async function finished(sheet: Sheet): Promise<void> {
  await sheet.sign("2.4:hold", "B. Okafor", "12");
  for (const id of ["2.5:1", "3.1:1", "3.2:1", "3.3:1", "3.4:1", "3.5:1"]) await sheet.tick(id);
  for (const n of [2, 3, 4, 6, 7, 8]) await sheet.tick(`3.6:1@n=${n}`);
  await sheet.tick("3.7:1");
  for (const n of [1, 5]) await sheet.tick(`3.8:1@n=${n}`);
  for (const round of [1, 2, 3]) await sheet.tick(`3.9:1#${round}`);
  await sheet.sign("3.9:sign-1", "A. Moran", "4711");
  await sheet.sign("3.9:hold", "B. Okafor", "12");
  for (const at of [1, 2, 3]) await sheet.tick(`end:${at}`);
}

test("a checklist from its first box to the saved record, over a reload, and the record is well", async () => {
  const sheet = await shelf.open(checklist(), { acceptDownloads: true });
  expect(await sheet.progress()).toBe("0 of 37 marked");
  await sheet.tick("start:1");
  expect(await sheet.said()).toBe("First give the name of who does the work.");
  await heated(sheet);
  await sheet.page.reload();
  expect(await sheet.said()).toMatch(/^The record of .* is back: 10 of 37 marked\.$/);
  expect(await sheet.next()).toEqual(["2.4:1"]);
  await seated(sheet);
  await finished(sheet);
  expect(await sheet.progress()).toBe("All is marked. Save the record.");
  const saved = await savedBy(sheet, () => sheet.press("Save record"));
  expect(await sheet.said()).toBe("The record is saved as WI-045-03-revision-B-FitBearing-record.json.");
  const result = verify(workspace, { path: PATH, record: saved });
  expect(result).toMatchObject({ kind: "done", report: { findings: [], summary: { complete: true, marked: 36 } } });
  expect(sheet.troubles).toEqual([]);
  await sheet.context.close();
});

test("out of order is refused with what comes first, and undo takes back", async () => {
  const sheet = await shelf.open(checklist());
  await sheet.name("A. Moran");
  await sheet.tick("2.1:1");
  expect(await sheet.said()).toBe("Not yet. Something else comes first.");
  for (const id of ["start:1", "start:2"]) await sheet.tick(id);
  await sheet.tick("2.1:1");
  expect(await sheet.said()).toBe("Not yet. Step 1.1 comes first.");
  expect(await sheet.page.locator('input[data-of="2.1:1"]').isChecked()).toBe(false);
  await sheet.tick("1.1:1");
  expect(await sheet.next()).toEqual(["1.2:1", "1.3:1", "1.4:1"]);
  await sheet.tick("1.1:1");
  expect(await sheet.said()).toContain("Press Undo");
  expect(await sheet.page.locator('input[data-of="1.1:1"]').isChecked()).toBe(true);
  await sheet.press("Undo");
  expect(await sheet.next()).toEqual(["1.1:1"]);
  await sheet.context.close();
});

test("the hold point refuses the performer's own name and badge, and opens what follows", async () => {
  const sheet = await shelf.open(checklist());
  await heated(sheet);
  await seated(sheet);
  for (const [name, badge] of [
    ["a.  MORAN", ""],
    ["B. Okafor", "4 711"],
  ] as const) {
    await sheet.sign("2.4:hold", name, badge);
    expect(await sheet.said()).toContain("This is the name or badge of somebody who did the work (fitter).");
  }
  await sheet.tick("2.5:1");
  expect(await sheet.said()).toBe("Not yet. Step 2.4 comes first.");
  await sheet.sign("2.4:hold", "B. Okafor", "12");
  expect(await sheet.next()).toEqual(["2.5:1"]);
  expect(await sheet.page.locator('.sign[data-of="2.4:hold"] .told').textContent()).toMatch(
    /^Signed: B\. Okafor \(12\), 20/,
  );
  await sheet.context.close();
});

test("a reading is judged while it is typed, in either unit, with point or comma", async () => {
  const sheet = await shelf.open(checklist());
  await sheet.name("A. Moran");
  const field = sheet.page.locator('input[type="text"][data-of="2.1:record-1"]');
  const told = sheet.page.locator('label:has([data-of="2.1:record-1"]) + .reading output');
  await field.fill("118,5");
  expect(await told.textContent()).toBe("Read as 118.5 °C = 245.3 °F: OUT OF LIMITS");
  await sheet.page
    .locator('label:has([data-of="2.1:record-1"]) + .reading')
    .getByRole("button", { name: "°F" })
    .click();
  expect(await told.textContent()).toBe("Read as 118.5 °F = 48.1 °C: OUT OF LIMITS");
  await field.fill("233");
  expect(await told.textContent()).toBe("Read as 233 °F = 111.7 °C: within limits");
  await field.fill("warm");
  expect(await told.textContent()).toBe("No number yet. Write it like 0.03 or 0,03.");
  await sheet.context.close();
});

test("a failed check opens the work to mend it; going back opens again what is to be done again", async () => {
  const sheet = await shelf.open(checklist());
  await heated(sheet);
  const failing = sheet.page.locator('.failing[data-failing*="2.4:1"]');
  expect(await failing.getAttribute("class")).not.toContain("is-open");
  await sheet.read("2.4:1", "0.05");
  expect(await failing.getAttribute("class")).toContain("is-open");
  expect(await sheet.next()).toEqual(["2.4:2"]);
  await sheet.tick("2.4:2");
  expect(await sheet.said()).toBe("Do it again from step 2.1: 6 entries are open again.");
  expect(await sheet.next()).toEqual(["2.1:1"]);
  expect(await sheet.page.locator(".earlier", { hasText: "0.05 mm" }).count()).toBe(1);
  await sheet.press("Undo");
  expect(await sheet.next()).toEqual(["2.4:2"]);
  await sheet.context.close();
});

test("the next screw is marked on the bolt circle, round after round", async () => {
  const text = "step tighten Screw[all] in cross pattern to 5 N·m, 10 N·m with Wrench";
  const sheet = await shelf.open(checklistOf(`${SCREWS}\nprocedure Work "Work" { ${text} }`));
  const marked = () =>
    sheet.page.locator(".turn").evaluateAll((all) => all.map((one) => one.getAttribute("data-place")));
  const order: (string | null | undefined)[] = [];
  for (let screw = 0; screw < 4; screw++) {
    order.push((await marked())[0]);
    await sheet.page.locator(".round button").click();
  }
  // Cross pattern of 4 (engineering.md, "Tightening round a bolt circle").
  expect(order).toEqual(["1", "3", "2", "4"]);
  expect(await sheet.next()).toEqual(["1:1#2"]);
  expect(await sheet.page.locator(".turned").count()).toBe(0);
  // A finger on the drawing does the same.
  await sheet.page.locator('[data-place="1"]').click();
  expect(await marked()).toEqual(["3"]);
  await sheet.context.close();
});

test("options, answers and values from readings", async () => {
  const sheet = await shelf.open(
    checklistOf(`${SCREWS}
      procedure Work "Work" {
        when Extent is Full { step { measure Gap "gap" with Depth expect 0.2 .. 1.2 mm record } }
        when Gap at most 0.6 mm { step "Thin." } otherwise { step "Thick." }
        step { choose Shim by Gap { 0.2 .. 0.6 mm: 0.5 mm 0.6 .. 1.2 mm: 1.0 mm } check "rest" with Depth expect at most Gap - 0.1 mm record }
        when Base is clean { step "Wipe." }
      }`),
  );
  await sheet.tick("1:1");
  expect(await sheet.said()).toBe("Not yet. First decide what stands above under “Decide before you start”.");
  await sheet.press("full overhaul");
  expect(await sheet.said()).toBe("extent of work: full overhaul.");
  await sheet.read("1:1", "0.7");
  expect(await sheet.next()).toEqual(["3:0"]);
  await sheet.tick("3:0");
  const computed = await sheet.page.locator(".computed").allTextContents();
  expect(computed).toEqual([
    "From the reading: 1.0 mm (0.039 in)",
    "From the readings: at most 0.60 mm = at most 0.0236 in",
  ]);
  await sheet.tick("4:1");
  await sheet.read("4:2", "0.6");
  expect(await sheet.progress()).toBe("5 of 6 marked");
  await sheet.press("No");
  expect(await sheet.progress()).toBe("All is marked. Save the record.");
  expect(sheet.troubles).toEqual([]);
  await sheet.context.close();
});

describe("records from elsewhere", () => {
  test("a saved record is opened again; that of another issue is not", async () => {
    const first = await shelf.open(checklist(), { acceptDownloads: true });
    await heated(first);
    await first.more();
    const saved = await savedBy(first, () => first.press("Save record"));
    await first.context.close();
    const second = await shelf.open(checklist("full"));
    const given = (text: string) =>
      second.page
        .locator('input[type="file"]')
        .setInputFiles({ name: "r.json", mimeType: "application/json", buffer: Buffer.from(text) });
    for (const [text, said] of [
      ["[]", "This file is no record of a checklist. It is not opened."],
      [
        saved.replace(/"hash": "..../, '"hash": "0000'),
        "This record was made with another issue of the checklist (content hash 0000",
      ],
      [
        saved.replace('"text":"110"', '"text":"180"'),
        "Entry 9 of this record does not fit the checklist: This does not fit the checklist.",
      ],
      [saved, "The record is open: 10 of 37 marked."],
    ] as const) {
      await given(text);
      await expect.poll(() => second.said()).toContain(said);
    }
    expect(await second.next()).toEqual(["2.4:1"]);
    expect(second.troubles).toEqual([]);
    await second.context.close();
  });

  test("a browser that keeps nothing says so", async () => {
    const script = "Object.defineProperty(window, 'localStorage', { get() { throw new Error('no'); } })";
    const sheet = await shelf.open(checklist(), { script });
    expect(await sheet.said()).toContain("This browser does not keep entries.");
    await sheet.name("A. Moran");
    await sheet.tick("start:1");
    expect(await sheet.next()).toEqual(["start:2"]);
    await sheet.context.close();
  });

  test("start again wants a second press", async () => {
    const sheet = await shelf.open(checklist());
    await heated(sheet);
    await sheet.more();
    await sheet.press("Start again");
    expect(await sheet.progress()).toBe("10 of 37 marked");
    await sheet.press("Press again to throw this record away");
    expect(await sheet.progress()).toBe("0 of 37 marked");
    await sheet.context.close();
  });
});

test("keyboard alone: every place is reached and marked, in order, with what comes next in view", async () => {
  const sheet = await shelf.open(
    checklistOf(readFileSync(join(root, "tests", "outputs", "golden", "short.sprag"), "utf8")),
  );
  const { keyboard } = sheet.page;
  const focused = () =>
    sheet.page.evaluate<string>(
      "document.activeElement?.closest('[data-of]')?.getAttribute('data-of') ?? document.activeElement?.textContent ?? ''",
    );
  const tabTo = async (wanted: string): Promise<void> => {
    for (let presses = 0; presses < 120; presses++) {
      if ((await focused()) === wanted) return;
      await keyboard.press("Tab");
    }
    throw new Error(`${wanted} is not reached by the keyboard`);
  };
  // The first field of the page that is for a name.
  await sheet.page.evaluate("document.querySelector('#people input').focus()");
  await keyboard.type("A. Moran");
  await keyboard.press("Tab");
  await keyboard.press("Tab");
  await keyboard.press("Enter");
  for (let turn = 0; turn < 30 && (await sheet.next()).length > 0; turn++) {
    const [next = ""] = await sheet.next();
    await tabTo("What is next");
    await keyboard.press("Enter");
    await expect.poll(focused).toBe(next);
    if (next.endsWith("hold") || next.includes("sign")) {
      if (next.endsWith("hold")) await keyboard.type("B. Okafor");
      await keyboard.press("Tab");
      await keyboard.press("Tab");
      await keyboard.press("Enter");
    } else if (await sheet.page.evaluate("document.activeElement.type === 'text'")) {
      await keyboard.type("0.02");
      await keyboard.press("Enter");
    } else await keyboard.press("Space");
  }
  expect(await sheet.progress()).toBe("All is marked. Save the record.");
  await sheet.context.close();
});

describe("what eyes and fingers need", () => {
  test.each(["light", "dark"] as const)("axe finds nothing: %s", async (colorScheme) => {
    const sheet = await shelf.open(checklist(), { colorScheme });
    expect(await violations(sheet)).toEqual([]);
    await heated(sheet);
    await sheet.read("2.4:1", "0.05");
    await sheet.more();
    expect(await violations(sheet)).toEqual([]);
    await sheet.more();
    await sheet.press("Undo");
    await seated(sheet);
    await sheet.sign("2.4:hold", "a. moran");
    expect(await violations(sheet)).toEqual([]);
    await finished(sheet);
    expect(await violations(sheet)).toEqual([]);
    await sheet.context.close();
  });

  test.each([
    [1280, 800],
    [800, 1280],
    [390, 844],
  ])("at %i × %i nothing to be pressed is under 44 px, and nothing runs out of the page", async (width, height) => {
    const sheet = await shelf.open(checklist(), { viewport: { width, height } });
    await sheet.more();
    const small = await sheet.page.evaluate<string[]>(
      "[...document.querySelectorAll('button, summary, label.tick, input[type=text]')].filter((one) => one.offsetParent !== null && Math.min(one.offsetWidth, one.offsetHeight) < 44).map((one) => one.outerHTML.slice(0, 80))",
    );
    expect(small).toEqual([]);
    expect(await sheet.page.evaluate("document.documentElement.scrollWidth <= innerWidth")).toBe(true);
    await sheet.context.close();
  });

  test("the switch between light and dark holds over a reload", async () => {
    const sheet = await shelf.open(checklist(), { colorScheme: "light" });
    const ground = () => sheet.page.evaluate<string>("getComputedStyle(document.body).backgroundColor");
    const light = await ground();
    await sheet.more();
    await sheet.press("Light or dark");
    const dark = await ground();
    expect(dark).not.toBe(light);
    await sheet.page.reload();
    expect(await ground()).toBe(dark);
    await sheet.context.close();
  });
});

test("on paper: what was filled in, a warning on the page of its step, no button", async () => {
  const sheet = await shelf.open(checklist(), { acceptDownloads: true });
  await heated(sheet);
  await seated(sheet);
  await finished(sheet);
  const pdf = await sheet.page.pdf({ preferCSSPageSize: true });
  const text = pdfText(pdf);
  expect(text).toContain("Signed: B. Okafor (12)");
  expect(text).toContain("0.02 mm, within limits");
  expect(text).not.toMatch(/What is next|Undo|Sign as/);
  const pages = text.split("\f");
  for (const [warning, step] of [
    ["The cleaner irritates skin and eyes.", "Clean the pump shaft"],
    ["The bearing and the shaft end are hot", "Heat the drive-end bearing"],
    ["The cover is too heavy for one person", "Install a new cover gasket."],
  ] as const)
    expect(pages.find((page) => page.includes(warning))).toContain(step);
  await sheet.context.close();
});

test("without a script it is what it was on paper: boxes to tick, lines to sign, all of it there", async () => {
  const sheet = await shelf.open(checklist(), { javaScriptEnabled: false });
  const { page } = sheet;
  expect(await page.locator("#bar").isVisible()).toBe(false);
  expect(await page.locator("#people").isVisible()).toBe(false);
  await page.locator('input[data-of="2.1:1"]').check();
  expect(await page.locator('input[data-of="2.1:1"]').isChecked()).toBe(true);
  expect(await page.locator('.sign[data-of="2.4:hold"] input').count()).toBe(3);
  expect(await page.locator(".picture img").count()).toBe(1);
  await sheet.context.close();
});

test("hostile text in every place is text, and nothing of it runs", async () => {
  const bad = "</script><script>document.title=1</script><img src=x onerror=document.title=2>\\\\u2028\\\"'{n}{done}";
  const q = (place: string) => `"${place}${bad}"`;
  const sheet = await shelf.open(
    checklistOf(`
      role Fitter ${q("role")} role Inspector ${q("inspector")}
      part Base ${q("part")} tool Depth ${q("tool")} { measures 0 .. 9 mm }
      option Extent ${q("option")} { Full ${q("choice")} Part "part" }
      procedure Work ${q("title")} {
        document ${q("number")} revision ${q("revision")} dated 2026-05-04
        task ${q("task")} {
          warning crush ${q("warning")} avoid ${q("avoid")} wear ${q("wear")}
          step One ${q("words")} { inspect Base ${q("look")} record ${q("label")} 1 .. 2 mm with Depth sign Fitter hold for Inspector figure "x.svg" ${q("caption")} }
          step { check ${q("check")} if it fails { stop ${q("stop")} } }
          when Extent is Full { step ${q("last")} }
        }
      }`),
    { acceptDownloads: true },
  );
  await sheet.page.locator('[data-choice="Full"]').click();
  await sheet.name(`<b>${bad}</b>`);
  await sheet.tick("1.1:1");
  await sheet.read("1.1:record-1", "1.5");
  await sheet.sign("1.1:sign-1", `<b>${bad}</b>`);
  await sheet.sign("1.1:hold", "<i>other</i>");
  await sheet.page.getByRole("button", { name: "Not in order" }).click();
  await sheet.page.reload();
  expect(await sheet.progress()).toBe("The work is stopped here.");
  expect(
    await sheet.page.evaluate(
      "document.querySelectorAll('script').length + ' ' + document.querySelectorAll('img, main b b, main i').length",
    ),
  ).toBe("2 0");
  expect(await sheet.page.title()).toContain("</script>");
  expect(sheet.troubles).toEqual([]);
  await sheet.context.close();
});

const SCREWS = `
  ring Circle "circle" { count 4 numbered clockwise seen from "above" position 1 at 12 o'clock }
  part Base "base" part Shim "shim" part Screw[1..4] "screw" { seats in Circle by number }
  tool Wrench "wrench" { torque 1 .. 100 N·m } tool Depth "depth gauge" { measures 0 .. 100 mm }
  option Extent "extent of work" { Full "full overhaul" Reseal "reseal only" }`;

/** The checklist of the one procedure of a text, whatever a check finds in it. */
function checklistOf(text: string): string {
  return make(text, { findings: [] }).html;
}

function pdfText(pdf: Buffer): string {
  return execFileSync("pdftotext", ["-layout", "-", "-"], { input: pdf, encoding: "utf8" });
}

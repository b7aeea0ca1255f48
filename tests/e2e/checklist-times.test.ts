// Timers and deadlines of the HTML checklist in a real browser, whose time of day passes only when a test says so.
import { afterAll, beforeAll, expect, test } from "vitest";
import { make } from "../outputs/make.ts";
import { openShelf, type Sheet, type Shelf, violations } from "./checklist-page.ts";

let shelf: Shelf;
beforeAll(async () => {
  shelf = await openShelf();
});
afterAll(() => shelf.close());

const HEAT = `
  part Base "base" part Cover "cover"
  procedure Work "Work" {
    step Heat { inspect Base takes 2 min }
    step { install Cover within 60 s after Heat }
    step { wait 90 s }
  }`;
/** At a time of day that passes only when a test says so. */
const open = async (): Promise<Sheet> => {
  const sheet = await shelf.open(make(HEAT, { findings: [] }).html);
  await sheet.page.clock.install({ time: new Date("2026-05-04T10:00:00") });
  await sheet.page.clock.pauseAt(new Date("2026-05-04T10:00:01"));
  await sheet.page.reload();
  return sheet;
};
const timer = (sheet: Sheet, at: number): Promise<string | null> =>
  sheet.page.locator(".timer:not([hidden]) .told").nth(at).textContent();

test("a timer is started, runs on over a reload and says when it is over, once", async () => {
  const sheet = await open();
  await sheet.press("Start the timer: 2 min");
  expect(await sheet.said()).toBe("Step 1: the timer runs, 2 min.");
  await sheet.page.clock.runFor(30_000);
  expect(await timer(sheet, 0)).toBe("90 s left");
  // What changes each second is no news.
  expect(await sheet.said()).toBe("Step 1: the timer runs, 2 min.");
  expect(await sheet.page.locator("#say[aria-live=polite] .told, .running[aria-live]").count()).toBe(0);
  await sheet.page.reload();
  expect(await timer(sheet, 0)).toBe("90 s left");
  expect(await sheet.page.locator(".running").textContent()).toBe("1: 90 s left");
  await sheet.page.clock.runFor(90_000);
  expect(await sheet.said()).toBe("Step 1: the time is over.");
  expect(await timer(sheet, 0)).toBe("over since 10:02:01");
  await sheet.tick("1:1");
  expect(await timer(sheet, 0)).toBe("2 min by the timer");
  await sheet.page.clock.resume();
  expect(await violations(sheet)).toEqual([]);
  await sheet.context.close();
});

test("within begins by itself; missed, it is told plainly, here and by the record", async () => {
  const sheet = await open();
  await sheet.tick("1:1");
  expect(await sheet.said()).toBe("Step 2 is to be done within 60 s.");
  await sheet.page.clock.runFor(20_000);
  expect(await timer(sheet, 0)).toBe("within 60 s after 1: 40 s left");
  await sheet.page.clock.runFor(50_000);
  expect(await timer(sheet, 0)).toBe("TOO LATE: 60 s after 1 were over at 10:01:01. Stop and ask.");
  expect(await sheet.said()).toMatch(/^2: TOO LATE/);
  await sheet.tick("2:1");
  expect(await timer(sheet, 0)).toBe("TOO LATE: done 70 s after 1, and at most 60 s are allowed. Stop and ask.");
  await sheet.page.clock.resume();
  expect(await violations(sheet)).toEqual([]);
  await sheet.press("Undo");
  await sheet.press("Undo");
  expect(await sheet.page.locator(".timer:not([hidden]) .told:not(:empty)").count()).toBe(0);
  expect(sheet.troubles).toEqual([]);
  await sheet.context.close();
});

test("a wait that is marked too early is told, on paper too, and paper shows no other timer", async () => {
  const sheet = await open();
  for (const id of ["1:1", "2:1"]) await sheet.tick(id);
  expect(await timer(sheet, 0)).toBe("Done 0 s after 1");
  await sheet.press("Start the timer: 90 s");
  await sheet.page.clock.runFor(10_000);
  await sheet.tick("3:1");
  expect(await timer(sheet, 1)).toBe("TOO EARLY: marked after 10 s, and 90 s are to be waited.");
  await sheet.page.emulateMedia({ media: "print" });
  // What was missed belongs to the record on paper too.
  expect(await sheet.page.locator(".timer:visible").allTextContents()).toEqual([
    expect.stringMatching(/TOO EARLY: marked after 10 s/),
  ]);
  expect(await sheet.page.locator(".running:visible, .timer button:visible").count()).toBe(0);
  await sheet.context.close();
});

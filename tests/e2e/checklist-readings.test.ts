// Readings as they are typed at a bench, limits that wait for a reading, and what stands beside a step that is not needed.
import { afterAll, beforeAll, expect, test } from "vitest";
import { make } from "../outputs/make.ts";
import { openShelf, type Shelf } from "./checklist-page.ts";

const TEXT = `
role Fitter "fitter"
option Kept "the seals are kept" { yes no }
tool Depth "depth gauge" { measures 0 .. 100 mm  resolution 0.02 mm }
part Base "base"
procedure Measure "Measure the gap" {
  begin with Base is installed
  step { measure Gap "gap" with Depth expect 0.2 .. 1.2 mm record  sign Fitter }
  step { check "Rest" with Depth expect 0 mm .. Gap + 0.1 mm record }
  when Kept is yes { step inspect Base "for scores" }
  step inspect Base "for cracks"
}
`;

let shelf: Shelf;
beforeAll(async () => {
  shelf = await openShelf();
});
afterAll(() => shelf.close());

test("what is no reading is told with what would be one", async () => {
  const sheet = await shelf.open(make(TEXT).html);
  await sheet.tick("start:1");
  expect(await sheet.said()).toBe("Not yet. First decide what stands above under “Decide before you start”.");
  const told = async (text: string): Promise<string | null> => {
    await sheet.page.locator('input[type="text"][data-of="1:1"]').fill(text);
    return sheet.page.locator('label:has([data-of="1:1"]) + .reading output').textContent();
  };
  expect(await told(".5")).toBe("Read as 0.5 mm = 0.0197 in: within limits");
  expect(await told(",05 in")).toBe("Read as 0.05 in = 1.27 mm: OUT OF LIMITS");
  expect(await told("27 mil")).toBe("Not read: “mil” is no unit here. Only mm, in.");
  expect(await told("0.5 - 0.6")).toBe("No number yet. Write it like 0.03 or 0,03.");
  expect(sheet.troubles).toEqual([]);
  await sheet.context.close();
});

test("limits from a reading stand there when both of their ends are known", async () => {
  const sheet = await shelf.open(make(TEXT).html);
  const computed = () => sheet.page.locator("[data-computed]").allTextContents();
  expect(await computed()).toEqual([""]);
  await sheet.page.locator('.option[data-of="option:Kept"] button').nth(1).click();
  await sheet.name("A. Moran");
  await sheet.tick("start:1");
  await sheet.read("1:1", "0.5");
  expect(await computed()).toEqual(["From the readings: 0.00 mm to 0.60 mm = 0.0000 in to 0.0236 in"]);
  await sheet.context.close();
});

test("what is said of a step lies beside its box, and not on it", async () => {
  const sheet = await shelf.open(make(TEXT).html);
  await sheet.page.locator('.option[data-of="option:Kept"] button').nth(1).click();
  await sheet.name("A. Moran");
  await sheet.tick("start:1");
  await sheet.read("1:1", "0.5");
  await sheet.sign("1:sign-1", "A. Moran");
  await sheet.read("2:1", "0.5");
  const step = sheet.page.locator('.step:has([data-of="3:1"])');
  const [state, box] = [await step.locator(".state").boundingBox(), await step.locator("input").first().boundingBox()];
  expect(await step.locator(".state").textContent()).toBe("not needed");
  expect(state?.width).toBeGreaterThan(10);
  expect((state?.x ?? 0) + (state?.width ?? 0)).toBeLessThanOrEqual(box?.x ?? 0);
  await sheet.context.close();
});

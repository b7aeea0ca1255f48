// The editor's setting for the crib: read, followed when it or the file changes, and silent without one.
import { expect, test } from "vitest";
import { withEditor } from "#harness/editor.ts";

const TOOLS = 'tool Wrench "torque wrench" { torque 8 .. 60 N·m }\npart Screw "cover screw"\nsource Manual "manual"\n';
const JOB = `use "tools.sprag"
procedure Close "Close" {
  step install Screw
  step tighten Screw to 45 N·m with Wrench per Manual "3"
}
`;
const CRIB = (top: number): string => `use "tools.sprag"
crib MainShop "tool crib" { item "TW-0117" for Wrench { torque 10 .. ${top} N·m  calibrated until 2026-05-04 } }
`;
const files = { "tools.sprag": TOOLS, "job.sprag": JOB, "shop/crib.sprag": CRIB(60).replace("tools", "../tools") };
const crib = (top: number) => CRIB(top).replace("tools", "../tools");

const traced = (setting: string, today = "2026-05-04", change?: number): Promise<readonly unknown[]> =>
  withEditor({ files, settings: { crib: setting }, today }, async (editor) => {
    await editor.open("job.sprag");
    await editor.diagnostics("job.sprag");
    if (change !== undefined) await editor.write("shop/crib.sprag", crib(change));
    return (await editor.diagnostics("job.sprag"))
      .map(({ code }) => code)
      .filter((code) => `${code}`.startsWith("trace."));
  });

test.each(["shop/crib.sprag", "./shop/crib.sprag", "shop\\crib.sprag"])("%s is read", async (setting) => {
  expect(await traced(setting)).toEqual([]);
  expect(await traced(setting, "2026-05-05")).toEqual(["trace.calibration"]);
});

test("it is followed when its file changes", async () => {
  expect(await traced("shop/crib.sprag", "2026-05-04", 44)).toEqual(["trace.no-crib-item"]);
  expect(await traced("shop/crib.sprag", "2026-05-04", 45)).toEqual([]);
});

test.each(["", "nowhere.sprag", "tools.sprag", "../other/crib.sprag"])("silent with “%s”", async (setting) => {
  expect(await traced(setting, "2027-01-01")).toEqual([]);
});

test.each([true, false])(
  "a file that was looked at before the client told of the crib is looked at again; folders checked: %s",
  async (checkFolder) => {
    let tell = (): void => {};
    const beforeSettings = new Promise<void>((done) => {
      tell = done;
    });
    const setting = { files, settings: { crib: "shop/crib.sprag", checkFolder }, today: "2026-05-05", beforeSettings };
    await withEditor(setting, async (editor) => {
      const shown = new Promise<void>((done) => {
        editor.connection.onNotification("sprag/status", () => done());
      });
      await editor.open("job.sprag");
      await shown;
      tell();
      const codes = (await editor.diagnostics("job.sprag")).map(({ code }) => `${code}`);
      expect(codes.filter((code) => code.startsWith("trace."))).toEqual(["trace.calibration"]);
    });
  },
);

// The setting of a torque wrench with adapters against worked examples of published manuals; windows; what is refused.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type Accuracy,
  beyondRange,
  lowestAccurateSetting,
  type Reach,
  settingWindow,
  torqueAtBolt,
  wrenchSetting,
} from "#engineering/wrench.ts";
import { show, showIn } from "#quantity/display.ts";
import { unitNamed } from "#quantity/unit.ts";
import { answer, endsIn, explanation, given, inUnit, refusal } from "./given.ts";

describe("a setting", () => {
  // Torque, arm, offset; the setting, and the last digit the source gives.
  test.each([
    ["100 lbf·in", "12 in", "6 in", 66.7, 0.05, "NAVEDTRA 14315, fig. 3-44 (read)"],
    ["40 lbf·ft", "12 in", "4 in", 30, 0.0001, "TM 9-2350-261-20-1, p. 2-29 (read)"],
    ["300 lbf·ft", "18 in", "6 in", 225, 0.0001, "TM 5-3810-305-23 (read)"],
    // The manual prints 17, which is above what the formula gives.
    ["19 lbf·ft", "22 in", "3 in", 16.72, 0.005, "TM 5-3805-274-13P (read)"],
    ["135 lbf·in", "10 in", "1.5 in", 117.39, 0.005, "a rotorcraft manual's worked example (read)"],
    ["135 lbf·in", "10 in", "-1.5 in", 158.82, 0.005, "a rotorcraft manual's worked example (read)"],
  ])("of %s on %s with %s is %d (%s)", (torque, arm, offset, printed, digit) => {
    const setting = wrenchSetting(asked(torque), reach(arm, offset));
    const unit = torque.endsWith("ft") ? "lbf·ft" : "lbf·in";
    expect(Math.abs(inUnit(setting, unit) - printed)).toBeLessThanOrEqual(digit);
  });

  test("of 60 on 12 in with 2 in applies 70 (TM 9-254, read)", () => {
    const set = { setting: given("60 lbf·ft", "torque"), prevailing: null };
    expect(inUnit(torqueAtBolt(set, reach("12 in", "2 in")), "lbf·ft")).toBeCloseTo(70, 12);
  });

  test("has the running torque added: 50 to 70 and 30 make 80 to 100 lbf·in (TB 43-0218, read)", () => {
    const wanted = asked("50 .. 70 lbf·in", "30 lbf·in");
    expect(endsIn(wrenchSetting(wanted, { arm: null, adapters: [] }), "lbf·in")).toEqual([80, 100]);
  });

  test("with the adapter at 90° is the torque, whatever the arm; in line and straight back both count", () => {
    const wanted = asked("100 N·m");
    expect(inUnit(wrenchSetting(wanted, reach(null, "60 mm", "90°")), "N·m")).toBe(100);
    expect(inUnit(wrenchSetting(wanted, reach("240 mm", "60 mm", "0°")), "N·m")).toBe(80);
    expect(inUnit(wrenchSetting(wanted, reach("240 mm", "40 mm", "180°")), "N·m")).toBeCloseTo(120, 12);
    expect(inUnit(wrenchSetting(wanted, reach("240 mm", "120 mm", "60°")), "N·m")).toBe(80);
    expect(inUnit(wrenchSetting(wanted, reach("240 mm", "60 mm", "45°")), "N·m")).toBeCloseTo(84.978, 3); // hand, cos 45° = 0.70711
  });

  test("of two adapters in a row adds their reach", () => {
    const two = { arm: given("300 mm", "length"), adapters: [adapter("40 mm"), adapter("60 mm", "0°")] };
    const setting = wrenchSetting(asked("80 N·m"), two);
    expect(inUnit(setting, "N·m")).toBe(60);
    expect(explanation(setting).formula).toBe("Ts = T·L/(L + E1 + E2·cos α2)");
  });

  test("holds for one arm only: 39.13 N·m for 400 mm would give 48.5 N·m on 250 mm (computed by hand)", () => {
    const setting = wrenchSetting(asked("45 ± 2 N·m"), reach("400 mm", "60 mm"));
    expect(inUnit(setting, "N·m")).toBeCloseTo((45 * 400) / 460, 12);
    const wrong = torqueAtBolt({ setting: given("39.13 N·m", "torque"), prevailing: null }, reach("250 mm", "60 mm"));
    expect(inUnit(wrong, "N·m")).toBeCloseTo(48.5, 1);
  });

  test("is in the writer's unit, and comes with how it was computed", () => {
    const setting = wrenchSetting(
      { torque: given("40 lbf·ft", "torque", "manual 6.4.9"), prevailing: given("2 lbf·ft", "torque") },
      reach("12 in", "4 in", "0°"),
    );
    const { result, formula, inputs, source, caution } = explanation(setting);
    expect(show(result.value)).toBe("31.5 lbf·ft");
    expect(showIn(result.value, unitNamed("N·m"), "nominal")).toBe("42.7 N·m");
    expect(formula).toBe("Ts = (T + Tp)·L/(L + E·cos α)");
    expect(inputs.map(({ symbol, value }) => `${symbol} ${show(value)}`)).toEqual([
      "T 40 lbf·ft",
      "Tp 2 lbf·ft",
      "L 12 in",
      "E 4 in",
      "α 0°",
    ]);
    expect(inputs[0]?.source).toBe("manual 6.4.9");
    expect(source).toContain("read");
    expect(caution).toContain("arm");
  });
});

describe("no setting", () => {
  test("without an arm, where the adapter changes it", () => {
    expect(refusal(wrenchSetting(asked("40 N·m"), reach(null, "60 mm")))).toEqual({ why: "missing", input: "arm" });
  });

  test("where the adapter points back to the grip or beyond it; just short of it there is one", () => {
    const back = (offset: string) => wrenchSetting(asked("40 N·m"), reach("300 mm", offset));
    expect(refusal(back("-300 mm")).why).toBe("not above zero");
    expect(refusal(back("-301 mm")).why).toBe("not above zero");
    expect(inUnit(back("-299 mm"), "N·m")).toBeCloseTo(12000, 6);
  });

  test("for another kind, an open end, or an arm of nothing", () => {
    const plain = reach("300 mm", "60 mm");
    expect(refusal(wrenchSetting({ torque: given("40 J", "energy"), prevailing: null }, plain))).toEqual({
      why: "wrong kind",
      input: "torque",
      wanted: "torque",
    });
    expect(refusal(wrenchSetting(asked("at least 40 N·m"), plain))).toEqual({
      why: "open end",
      input: "torque",
      end: "high",
    });
    expect(refusal(wrenchSetting(asked("40 N·m"), reach("0 mm", "60 mm"))).why).toBe("not above zero");
  });
});

describe("the window of settings", () => {
  test("of the sample: 38.95 to 39.23 N·m (computed by hand: 43/0.96 and 47·0.96, times 400/460)", () => {
    const window = settingWindow(asked("45 ± 2 N·m"), reach("400 mm", "60 mm"), accuracy("4 %"));
    const [low, high] = endsIn(window, "N·m");
    expect(low).toBeCloseTo(38.949, 3);
    expect(high).toBeCloseTo(39.235, 3);
    expect(show(answer(window))).toBe("39.13 N·m (38.95 .. 39.23 N·m)");
  });

  test("keeps every torque that the wrench can give inside the band", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 500 }),
        fc.integer({ min: 1, max: 20 }),
        fc.integer({ min: 1, max: 80 }),
        fc.integer({ min: -100, max: 300 }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (torque, percent, tenths, offset, wrong) => {
          const wanted = asked(`${torque} N·m ± ${percent} %`);
          const lever = reach("400 mm", `${offset} mm`);
          const window = settingWindow(wanted, lever, accuracy(`${tenths / 10} %`));
          if (!window.ok) {
            expect(window.refusal.why).toBe("nothing left");
            return;
          }
          const gain = (400 + offset) / 400;
          for (const setting of endsIn(window, "N·m")) {
            const real = setting * gain * (1 + (wrong * tenths) / 1000);
            expect(real).toBeGreaterThanOrEqual(torque * (1 - percent / 100) * (1 - 1e-12));
            expect(real).toBeLessThanOrEqual(torque * (1 + percent / 100) * (1 + 1e-12));
          }
        },
      ),
    );
  });

  test("is empty for a band that the wrench cannot hold, with both limits; at the edge one setting is left", () => {
    const narrow = (band: string) => settingWindow(asked(band), reach(null), accuracy("5 %"));
    const none = refusal(narrow("100 ± 5 N·m"));
    expect(none).toMatchObject({ why: "nothing left", input: "setting window" });
    expect(none.why === "nothing left" && [show(none.low), show(none.high)]).toEqual(["100 N·m", "99.75 N·m"]);
    // 95 / 0.95 = 100 = 105.263… · 0.95
    expect(refusal(narrow("95 .. 105.26 N·m")).why).toBe("nothing left");
    expect(endsIn(narrow("95 .. 105.27 N·m"), "N·m")[0]).toBe(100);
    expect(refusal(narrow("100 N·m")).why).toBe("nothing left");
  });

  test("is one setting for a torque without tolerance and a wrench without error", () => {
    expect(endsIn(settingWindow(asked("100 N·m"), reach(null), accuracy("0 %")), "N·m")).toEqual([100, 100]);
  });

  test("of an arm with a band holds for each arm in it (by hand: 40/1.15 and 50/1.2)", () => {
    const [low, high] = endsIn(
      settingWindow(asked("40 .. 50 N·m"), reach("300 .. 400 mm", "60 mm"), accuracy("0 %")),
      "N·m",
    );
    expect(low).toBeCloseTo(40 / 1.15, 9);
    expect(high).toBeCloseTo(50 / 1.2, 9);
  });

  test("for an accuracy of full scale: 4 N·m of 100 off each end", () => {
    const window = settingWindow(asked("40 .. 50 N·m"), reach(null), {
      share: given("4 %", "ratio"),
      fullScale: given("100 N·m", "torque"),
    });
    expect(endsIn(window, "N·m")).toEqual([44, 46]);
    expect(explanation(window).formula).toBe("Tlow + a·S .. Thigh − a·S");
  });

  test("takes the end of a running torque's band that narrows it", () => {
    const window = settingWindow(asked("40 .. 50 N·m", "3 .. 5 N·m"), reach(null), accuracy("0 %"));
    expect(endsIn(window, "N·m")).toEqual([45, 53]);
  });

  test.each(["100 %", "150 %", "-1 %"])("is refused for an accuracy of %s", (share) => {
    expect(refusal(settingWindow(asked("40 .. 50 N·m"), reach(null), accuracy(share))).why).toBe("outside");
  });
});

test("setting and torque at the bolt undo each other, and the setting rises with the torque and falls with the offset", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 900 }),
      fc.integer({ min: 100, max: 900 }),
      fc.integer({ min: 0, max: 99 }),
      fc.integer({ min: 0, max: 360 }),
      fc.integer({ min: 0, max: 20 }),
      (torque, arm, offset, angle, running) => {
        const lever = reach(`${arm} mm`, `${offset} mm`, `${angle}°`);
        const setting = wrenchSetting(asked(`${torque} N·m`, `${running} N·m`), lever);
        const back = torqueAtBolt(
          { setting: { value: answer(setting) }, prevailing: given(`${running} N·m`, "torque") },
          lever,
        );
        expect(inUnit(back, "N·m")).toBeCloseTo(torque, 9);
        expect(inUnit(wrenchSetting(asked(`${torque + 1} N·m`, `${running} N·m`), lever), "N·m")).toBeGreaterThan(
          inUnit(setting, "N·m"),
        );
        const longer = wrenchSetting(asked(`${torque} N·m`), reach(`${arm} mm`, `${offset + 1} mm`));
        expect(inUnit(longer, "N·m")).toBeLessThan(
          inUnit(wrenchSetting(asked(`${torque} N·m`), reach(`${arm} mm`, `${offset} mm`)), "N·m"),
        );
        // A cosine says the same for the angle and its negative: bands of angles lie between those of their ends and 1.
        const swung = wrenchSetting(
          asked(`${torque} N·m`),
          reach(`${arm} mm`, `${offset} mm`, `-${angle % 90} .. ${angle % 90}°`),
        );
        expect(endsIn(swung, "N·m")[0]).toBeCloseTo((torque * arm) / (arm + offset), 9);
      },
    ),
  );
});

describe("the range of a wrench", () => {
  test.each([
    ["8 N·m", null],
    ["7.99 N·m", "below"],
    ["60 N·m", null],
    ["60.01 N·m", "above"],
    ["50 .. 61 N·m", "above"],
    ["5 .. 20 N·m", "below"],
    ["70 lbf·in", "below"], // 7.909 N·m
    ["71 lbf·in", null], // 8.022 N·m
  ])("8 .. 60 N·m and %s: %s", (setting, side) => {
    expect(beyondRange(given(setting, "torque").value, given("8 .. 60 N·m", "torque").value)).toBe(side);
  });

  test("without a low end is left at the top only", () => {
    const range = given("at most 60 N·m", "torque").value;
    expect(beyondRange(given("1 N·m", "torque").value, range)).toBeNull();
    expect(beyondRange(given("61 N·m", "torque").value, range)).toBe("above");
  });

  test("is accurate from 20 % of its top upward (TM 1-1500-204-23-9, table 8-1, read)", () => {
    const from = lowestAccurateSetting(given("8 .. 60 N·m", "torque"));
    expect(show(answer(from))).toBe("at least 12 N·m");
    expect(refusal(lowestAccurateSetting(given("at least 8 N·m", "torque"))).why).toBe("open end");
  });
});

function asked(torque: string, prevailing?: string) {
  return { torque: given(torque, "torque"), prevailing: prevailing === undefined ? null : given(prevailing, "torque") };
}

function reach(arm: string | null, offset?: string, angle?: string): Reach {
  const adapters = offset === undefined ? [] : [adapter(offset, angle)];
  return { arm: arm === null ? null : given(arm, "length"), adapters };
}

function adapter(offset: string, angle?: string) {
  return { offset: given(offset, "length"), angle: angle === undefined ? null : given(angle, "angle") };
}

function accuracy(share: string): Accuracy {
  return { share: given(share, "ratio"), fullScale: null };
}

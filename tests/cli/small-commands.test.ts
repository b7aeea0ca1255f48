// `sprag explain`, `sprag convert`, `sprag new`.
import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { folderWith } from "#harness/command.ts";

describe("explain", () => {
  test("lists every rule with its severity, within the terminal", () => {
    const { status, out } = folderWith().spragAs({ isTerminal: true, columns: 80 }, "explain");
    expect(status).toBe(0);
    expect(out).toMatch(/^order\.enclosed +error +Work on a part/m);
    expect(out).toMatch(/^units\.style +hint /m);
    expect(Math.max(...out.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  test("prints the page of a code", () => {
    const { status, out } = folderWith().sprag("explain", "order.enclosed");
    expect(status).toBe(0);
    expect(out).toMatch(/^order\.enclosed \(error\)\n\nWork on a part/);
    expect(out).toContain("Why it matters");
    expect(out).toContain("Made right");
  });

  test.each([
    ["order.enclosd", "no rule has the code “order.enclosd”. Nearest: order.enclosed. sprag explain lists them all."],
    ["enclosed", "no rule has the code “enclosed”. Nearest: order.enclosed. sprag explain lists them all."],
    ["gearbox", "no rule has the code “gearbox”. sprag explain lists them all."],
    ["\u001b[2J", "no rule has the code “<1B>[2J”. sprag explain lists them all."],
  ])("refuses %j with the nearest", (code, message) => {
    expect(folderWith().sprag("explain", code)).toEqual({ status: 2, out: "", err: `sprag: ${message}\n` });
  });
});

describe("convert", () => {
  const convert = (...words: string[]) => folderWith().sprag("convert", ...words);

  test("shows the value as it may be written, the band inwards, and each end exactly", () => {
    // 1 in = 25.4 mm exactly (NIST SP 811, appendix B.6); the digits are long division by hand of 107/254 and its like.
    expect(convert("11 ± 0.3 mm", "in")).toEqual({
      status: 0,
      err: "",
      out: `11 ± 0.3 mm = 0.433 in (0.422 .. 0.444 in)   (length)
  band    0.422 .. 0.444 in  rounded inwards; keeping it keeps the original
  low     0.421259842520 in  rounded; exactly 107/254
  nominal 0.433070866142 in  rounded; exactly 55/127
  high    0.444881889764 in  rounded; exactly 113/254
`,
    });
  });

  test("shows no band that leaves the original, nor one the wrong way round", () => {
    // 160 lbf·ft = 216.93 N·m (NIST SP 811): 217 would be outside; 1 mm = 5/127 in has no end as a decimal.
    expect(convert("140 .. 160 lbf·ft", "N·m").out).toMatch(/^140 .. 160 lbf·ft = 190 .. 216 N·m/);
    expect(convert("1 .. 1 mm", "in").out).toMatch(/^1 .. 1 mm = (0\.03937007874016) .. \1 in/);
  });

  test("takes a value below zero, and a quantity without quotation marks", () => {
    // −40 is the same on both scales (memory).
    expect(convert("-40 °C", "°F").out).toContain("-40 °C = -40 °F   (temperature)\n  value   -40 °F  exactly\n");
    expect(convert("-40 °C", "°F").out).toContain("-40 °C = -72 °F   (temperature difference)");
    expect(convert("12", "in", "mm").out).toBe(convert("12 in", "mm").out);
  });

  test("says how what has two meanings is read", () => {
    const { status, out, err } = convert("3 gal", "L");
    expect(status).toBe(0);
    // 1 US gallon = 3.785 411 784 L exactly (NIST SP 811, appendix B.8).
    expect(out).toContain("11.356235352 L  exactly");
    expect(err).toContain("sprag: “gal” can mean two things.");
    expect(convert("1,5 mm", "in").err).toBe("sprag: “1,5” has a comma where a point belongs. It is read as 1.5.\n");
  });

  test.each([
    [["40 N·m", "J"], "This is a torque; an energy belongs here."],
    [["40 Nn", "N·m"], "“Nn” is no unit."],
    [["38–42 N·m", "lbf·ft"], "Write 38 .. 42 N·m."],
    [["40 N·m", "lbff"], "“lbff” is no unit. Nearest: lbf"],
    [["40", "mm"], "The number 40 has no unit."],
    [["-300 °C", "K"], "is below absolute zero."],
    [["about forty", "mm"], "“about forty” cannot be read as a quantity: a number belongs where “about forty” stands."],
    [["40 mm and more", "in"], "nothing more belongs where “and more” stands."],
    [["40 mm"], "convert wants a quantity and a unit"],
    [["", "mm"], "convert wants a quantity and a unit"],
  ])("refuses %j", (words, message) => {
    const { status, err, out } = convert(...words);
    expect(err + out).toContain(message);
    // A temperature that cannot be is still a difference that can.
    expect(status).toBe(words[0] === "-300 °C" ? 0 : 2);
  });
});

describe("new", () => {
  test("makes a folder whose procedure is free of findings, laid out, and can be written", () => {
    const folder = folderWith();
    const { status, out, err } = folder.sprag("new", "my-shop");
    expect({ status, err }).toEqual({ status: 0, err: "" });
    expect(readdirSync(join(folder.path, "my-shop"))).toEqual(["close-housing.sprag", "shop.sprag"]);
    expect(folder.sprag("check", "my-shop", "--fail-on", "information").out).toMatch(/^No findings in 2 files;/);
    expect(folder.sprag("format", "my-shop", "--check").status).toBe(0);
    for (const [, call = ""] of out.matchAll(/ {2}sprag (.*)$/gm)) {
      expect(folder.sprag(...call.split(" ")), call).toMatchObject({ status: 0 });
    }
    expect(existsSync(join(folder.path, "checklist.html"))).toBe(true);
  });

  test("takes an empty folder, also this one, and makes those above", () => {
    const folder = folderWith();
    expect(folder.sprag("new", ".").status).toBe(0);
    expect(readdirSync(folder.path)).toContain("shop.sprag");
    expect(folder.sprag("new", "deep/down").status).toBe(0);
  });

  test("comes back where the system lets nobody make a folder", () => {
    const { err, out, status } = folderWith().sprag("new", "/proc/of-nobody/shop");
    expect({ out, status }).toEqual({ out: "", status: 2 });
    expect(err).toMatch(/^sprag: \/proc\/of-nobody\/shop /);
  });

  test.each([
    ["full", "full holds files already (notes.txt). Give a folder that is empty or not there yet."],
    ["full/notes.txt", "full/notes.txt is a file, not a folder."],
    ["full/notes.txt/more", "full/notes.txt/more is not there: part of its path is a file, not a folder."],
    [" ", "the name of the folder is empty. Give one, such as my-shop."],
  ])("refuses %j and changes nothing", (path, message) => {
    const folder = folderWith({ "full/notes.txt": "mine" });
    expect(folder.sprag("new", path)).toEqual({ status: 2, out: "", err: `sprag: ${message}\n` });
    expect(readdirSync(join(folder.path, "full"))).toEqual(["notes.txt"]);
    expect(folder.read("full/notes.txt")).toBe("mine");
  });
});

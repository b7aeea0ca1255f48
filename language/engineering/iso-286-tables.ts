// The tables of ISO 286-1 for sizes to 500 mm, in micrometres: standard tolerances and fundamental deviations (second: the
// same in several copies). Whole numbers, exact. Knows no rule of the standard (iso-286.ts).

/** The upper ends of the steps in mm, each step from above the one before it. */
export const STEPS: readonly number[] = [
  3, 6, 10, 14, 18, 24, 30, 40, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250, 280, 315, 355, 400, 450, 500,
];

/** The main step (0 to 12) that each sub-step belongs to. */
const MAIN: readonly number[] = [0, 1, 2, 3, 3, 4, 4, 5, 5, 6, 6, 7, 7, 8, 8, 8, 9, 9, 9, 10, 10, 11, 11, 12, 12];

/** Standard tolerances by grade, for the main steps. IT4 is needed for the holes of grade 5 alone. */
const TOLERANCES: Readonly<Record<number, string>> = {
  4: "3 4 4 5 6 7 8 10 12 14 16 18 20",
  5: "4 5 6 8 9 11 13 15 18 20 23 25 27",
  6: "6 8 9 11 13 16 19 22 25 29 32 36 40",
  7: "10 12 15 18 21 25 30 35 40 46 52 57 63",
  8: "14 18 22 27 33 39 46 54 63 72 81 89 97",
  9: "25 30 36 43 52 62 74 87 100 115 130 140 155",
  10: "40 48 58 70 84 100 120 140 160 185 210 230 250",
  11: "60 75 90 110 130 160 190 220 250 290 320 360 400",
};

/**
 * Fundamental deviations of shafts: the size of the upper one (which is negative) for a to g, the lower one from k on.
 * With 13 values for the main steps, with 25 for the sub-steps, with 3 for the sizes to 10 mm; `-` where there is none.
 */
const SHAFTS: Readonly<Record<string, string>> = {
  a: "270 270 280 290 290 300 300 310 320 340 360 380 410 460 520 580 660 740 820 920 1050 1200 1350 1500 1650",
  b: "140 140 150 150 150 160 160 170 180 190 200 220 240 260 280 310 340 380 420 480 540 600 680 760 840",
  c: "60 70 80 95 95 110 110 120 130 140 150 170 180 200 210 230 240 260 280 300 330 360 400 440 480",
  cd: "34 46 56",
  d: "20 30 40 50 65 80 100 120 145 170 190 210 230",
  e: "14 20 25 32 40 50 60 72 85 100 110 125 135",
  ef: "10 14 18",
  f: "6 10 13 16 20 25 30 36 43 50 56 62 68",
  fg: "4 6 8",
  g: "2 4 5 6 7 9 10 12 14 15 17 18 20",
  k: "0 1 1 1 2 2 2 3 3 4 4 4 5",
  m: "2 4 6 7 8 9 11 13 15 17 20 21 23",
  n: "4 8 10 12 15 17 20 23 27 31 34 37 40",
  p: "6 12 15 18 22 26 32 37 43 50 56 62 68",
  r: "10 15 19 23 23 28 28 34 34 41 43 51 54 63 65 68 77 80 84 94 98 108 114 126 132",
  s: "14 19 23 28 28 35 35 43 43 53 59 71 79 92 100 108 122 130 140 158 170 190 208 232 252",
  t: "- - - - - - 41 48 54 66 75 91 104 122 134 146 166 180 196 218 240 268 294 330 360",
  u: "18 23 28 33 33 41 48 60 70 87 102 124 144 170 190 210 236 258 284 315 350 390 435 490 540",
  v: "- - - - 39 47 55 68 81 102 120 146 172 202 228 252 284 310 340 385 425 475 530 595 660",
  x: "20 28 34 40 45 54 64 80 97 122 146 178 210 248 280 310 350 385 425 475 525 590 660 740 820",
  y: "- - - - - 63 75 94 114 144 174 214 254 300 340 380 425 470 520 580 650 730 820 920 1000",
  z: "26 35 42 50 60 73 88 112 136 172 210 258 310 365 415 465 520 575 640 710 790 900 1000 1100 1250",
  za: "32 42 52 64 77 98 118 148 180 226 274 335 400 470 535 600 670 740 820 920 1000 1150 1300 1450 1600",
  zb: "40 50 67 90 108 136 160 200 242 300 360 445 525 620 700 780 880 960 1050 1200 1300 1500 1650 1850 2100",
  zc: "60 80 97 130 150 188 218 274 325 405 480 585 690 800 900 1000 1150 1250 1350 1550 1700 1900 2100 2400 2600",
};

/** The lower deviation of the shafts j, negative, by grade. */
const SHAFTS_J: Readonly<Record<number, string>> = {
  5: "-2 -2 -2 -3 -4 -5 -7 -9 -11 -13 -16 -18 -20",
  6: "-2 -2 -2 -3 -4 -5 -7 -9 -11 -13 -16 -18 -20",
  7: "-4 -4 -5 -6 -8 -10 -12 -15 -18 -21 -26 -28 -32",
};

/** The upper deviation of the holes J, by grade. */
const HOLES_J: Readonly<Record<number, string>> = {
  6: "2 5 5 6 8 10 13 16 18 22 25 29 33",
  7: "4 6 8 10 12 14 18 22 26 30 36 39 43",
  8: "6 10 12 15 20 24 28 34 41 47 55 60 66",
};

/** The standard tolerance of a grade from 4 to 11 in a sub-step (its place in {@link STEPS}); null for any other. */
export function tolerance(grade: number, step: number): number | null {
  return valueIn(TOLERANCES[grade], step);
}

/** The fundamental deviation of the shafts of a letter other than h, j and js, as {@link SHAFTS} has it; null where there is none. */
export function fundamentalDeviation(letter: string, step: number): number | null {
  return Object.hasOwn(SHAFTS, letter) ? valueIn(SHAFTS[letter], step) : null;
}

/** The lower deviation of a shaft j; null where there is none. */
export function lowerOfShaftJ(grade: number, step: number): number | null {
  return valueIn(SHAFTS_J[grade], step);
}

/** The upper deviation of a hole J; null where there is none. */
export function upperOfHoleJ(grade: number, step: number): number | null {
  return valueIn(HOLES_J[grade], step);
}

function valueIn(row: string | undefined, step: number): number | null {
  const values = row?.split(" ") ?? [];
  const text = values[values.length === STEPS.length ? step : (MAIN[step] ?? STEPS.length)];
  return text === undefined || text === "-" ? null : Number(text);
}

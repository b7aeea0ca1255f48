// Other spellings of the units: those that only look different, those that depend on the kind wanted, and those that
// can be misunderstood. Knows no factor.
import type { Kind } from "./kind.ts";

/** Spellings of one unit name that mean nothing else; each is read and reported as style. */
export function plainSpelling(name: string): string | undefined {
  return PLAIN.get(name);
}

/** Whole unit texts, or names in compounds, that stand for a compound or carry a qualifier. */
export function wholeSpelling(text: string): string | undefined {
  return own(WHOLE, text);
}

/** A unit text that in a place of this kind means another unit than its letters say (`1/min` as a speed of rotation). */
export function spellingFor(text: string, kind: Kind): string | undefined {
  return own(FOR_KIND[kind] ?? {}, text);
}

/** A name that can be misunderstood: what it is read as, and why that needs saying. */
export interface Doubt {
  readonly readAs: string;
  readonly why: string;
}

/** Names that differ by country, or that the shop floor uses loosely; whatever kind is wanted. */
export function doubtfulName(name: string): Doubt | undefined {
  return own(DOUBTFUL, name);
}

/** A lone name that in a place of this kind is likely another unit (`lb` as a force). */
export function doubtfulFor(text: string, kind: Kind): Doubt | undefined {
  return own(DOUBTFUL_FOR[kind] ?? {}, text);
}

/** The force a mass unit stands for where a force, torque or pressure is wanted. */
export function weightOf(mass: string): string | undefined {
  return own(WEIGHTS, mass);
}

/** What a spelling with one blank inside stands for (`ft lb`). */
export function spacedSpelling(text: string): string | undefined {
  return own(SPACED, text);
}

/** All spellings with a blank inside, for the scanner. */
export function spacedSpellings(): readonly string[] {
  return Object.keys(SPACED);
}

const SPELLINGS: Readonly<Record<string, string>> = {
  "°C": "degC deg_C ℃ ºC °c Celsius celsius",
  "°F": "degF deg_F ℉ ºF °f Fahrenheit fahrenheit",
  "°R": "degR",
  "°": "deg degree degrees º",
  "′": "arcmin",
  "″": "arcsec",
  turn: "turns rev revs revolution revolutions r",
  gon: "grad",
  Ω: "ohm Ohm ohms Ohms",
  kΩ: "kohm kOhm",
  MΩ: "Mohm MOhm",
  mΩ: "mohm mOhm",
  "o'clock": "o’clock oclock",
  "dB(A)": "dBA dBa dB(a)",
  m: "meter meters metre metres",
  mm: "millimeter millimeters millimetre millimetres",
  cm: "centimeter centimeters centimetre centimetres",
  µm: "micron microns micrometer micrometers micrometre micrometres",
  in: "inch inches",
  ft: "foot feet",
  yd: "yard yards",
  mi: "mile miles",
  mil: "mils",
  thou: "thous",
  µin: "uin microinch microinches",
  L: "l liter liters litre litres",
  mL: "ml",
  cL: "cl",
  dL: "dl",
  g: "gram grams gramme grammes",
  kg: "Kg KG kgs kilo kilos kilogram kilograms",
  t: "tonne tonnes",
  lb: "lbs lbm pound pounds",
  oz: "ozs ounce ounces ozm",
  s: "sec secs second seconds",
  min: "mins minute minutes",
  h: "hr hrs hour hours",
  d: "day days",
  N: "newton newtons Newton Newtons",
  kgf: "kp",
  lbf: "lbsf lbF",
  ozf: "ozF",
  kip: "kips",
  J: "joule joules Joule Joules",
  W: "watt watts Watt Watts",
  hp: "HP bhp",
  Btu: "BTU btu",
  Pa: "pascal pascals Pascal",
  bar: "bars Bar BAR",
  psi: "PSI Psi",
  Torr: "torr",
  mmH2O: "mmH₂O",
  cmH2O: "cmH₂O",
  inH2O: "inH₂O",
  ftH2O: "ftH₂O",
  V: "volt volts Volt Volts",
  A: "amp amps ampere amperes",
  Hz: "hz hertz Hertz",
  rpm: "RPM Rpm",
  gn: "gₙ",
  kn: "kt kts knot knots",
  "%": "percent pct",
  "‰": "permille",
  galUS: "USgal gallonUS gallonsUS",
  galUK: "UKgal gallonUK impgal",
  qtUS: "USqt",
  flozUS: "USfloz",
  tonUS: "shortton",
  tonUK: "longton",
};

const PLAIN = new Map(
  Object.entries(SPELLINGS).flatMap(([canonical, others]) =>
    others.split(" ").map((other): [string, string] => [other, canonical]),
  ),
);
// `u` for the prefix micro: the plain-keyboard form.
for (const base of ["m", "g", "s", "N", "Pa", "J", "W", "V", "A", "F", "Ω", "ohm", "L", "l", "K", "rad", "bar"]) {
  const canonical = PLAIN.get(base) ?? base;
  PLAIN.set(`u${base}`, `µ${canonical}`);
}

const WHOLE: Readonly<Record<string, string>> = {
  Nm: "N·m",
  mNm: "mN·m",
  kNm: "kN·m",
  MNm: "MN·m",
  daNm: "daN·m",
  cNm: "cN·m",
  Ncm: "N·cm",
  Nmm: "N·mm",
  kgfm: "kgf·m",
  kgfcm: "kgf·cm",
  kpm: "kgf·m",
  gmm: "g·mm",
  kgmm: "kg·mm",
  lbfft: "lbf·ft",
  ftlbf: "lbf·ft",
  ftlb: "lbf·ft",
  lbft: "lbf·ft",
  ftlbs: "lbf·ft",
  lbfin: "lbf·in",
  inlbf: "lbf·in",
  inlb: "lbf·in",
  lbin: "lbf·in",
  inlbs: "lbf·in",
  Wh: "W·h",
  kWh: "kW·h",
  MWh: "MW·h",
  Ws: "W·s",
  Pas: "Pa·s",
  mPas: "mPa·s",

  kph: "km/h",
  kmh: "km/h",
  fps: "ft/s",
  fpm: "ft/min",
  ips: "in/s",
  mps: "m/s",
  cfm: "ft³/min",
  CFM: "ft³/min",
  lpm: "L/min",
  LPM: "L/min",
  cc: "cm³",
  ccm: "cm³",
  cuin: "in³",
  cuft: "ft³",
  sqin: "in²",
  sqft: "ft²",
  sqmm: "mm²",
  pli: "lbf/in",
  psf: "lbf/ft²",
  psig: "psi gauge",
  psia: "psi absolute",
  "psi(g)": "psi gauge",
  "psi(a)": "psi absolute",
  barg: "bar gauge",
  bara: "bar absolute",
  "bar(g)": "bar gauge",
  "bar(a)": "bar absolute",
  VAC: "V AC",
  VDC: "V DC",
  Vac: "V AC",
  Vdc: "V DC",
  kVAC: "kV AC",
  kVDC: "kV DC",
  mVDC: "mV DC",
  mVAC: "mV AC",
};

const FOR_KIND: Partial<Record<Kind, Readonly<Record<string, string>>>> = {
  "rotational speed": { "1/min": "rpm", "1/s": "turn/s", "turn/min": "rpm" },
  angle: { "'": "′", '"': "″" },
};

const BY_COUNTRY = "US and imperial measures differ";
const TON = "a ton is 2000 lb (US), 2240 lb (UK) or 1000 kg";
const DOUBTFUL: Readonly<Record<string, Doubt>> = {
  gal: { readAs: "galUS", why: BY_COUNTRY },
  gals: { readAs: "galUS", why: BY_COUNTRY },
  gallon: { readAs: "galUS", why: BY_COUNTRY },
  gallons: { readAs: "galUS", why: BY_COUNTRY },
  qt: { readAs: "qtUS", why: BY_COUNTRY },
  quart: { readAs: "qtUS", why: BY_COUNTRY },
  quarts: { readAs: "qtUS", why: BY_COUNTRY },
  pt: { readAs: "ptUS", why: BY_COUNTRY },
  pint: { readAs: "ptUS", why: BY_COUNTRY },
  pints: { readAs: "ptUS", why: BY_COUNTRY },
  floz: { readAs: "flozUS", why: BY_COUNTRY },
  fl_oz: { readAs: "flozUS", why: BY_COUNTRY },
  gpm: { readAs: "galUS/min", why: BY_COUNTRY },
  GPM: { readAs: "galUS/min", why: BY_COUNTRY },
  ton: { readAs: "tonUS", why: TON },
  tons: { readAs: "tonUS", why: TON },
  C: { readAs: "°C", why: "C alone is the unit of electric charge" },
  dB: { readAs: "dB(A)", why: "a sound level needs its weighting" },
  "'": { readAs: "ft", why: "the sign is used for feet and for minutes of arc" },
  '"': { readAs: "in", why: "the sign is used for inches and for seconds of arc" },
};

const MASS_FOR_FORCE = "it is a unit of mass";
const DOUBTFUL_FOR: Partial<Record<Kind, Readonly<Record<string, Doubt>>>> = {
  force: { lb: { readAs: "lbf", why: MASS_FOR_FORCE }, oz: { readAs: "ozf", why: MASS_FOR_FORCE } },
  torque: { lb: { readAs: "lbf·ft", why: MASS_FOR_FORCE }, oz: { readAs: "ozf·in", why: MASS_FOR_FORCE } },
  volume: { oz: { readAs: "flozUS", why: "it is a unit of mass" } },
  temperature: { F: { readAs: "°F", why: "F alone is the farad" } },
  "temperature difference": { F: { readAs: "°F", why: "F alone is the farad" } },
  acceleration: { g: { readAs: "gn", why: "g alone is the gram" } },
};

const WEIGHTS: Readonly<Record<string, string>> = { lb: "lbf", oz: "ozf", kg: "kgf", g: "gf", t: "tf" };

// With a blank inside: what is read instead.
const SPACED: Readonly<Record<string, string>> = {
  ...joined(
    "·",
    "N m|N mm|N cm|kN m|mN m|daN m|kgf m|kgf cm|ozf in|lbf ft|lbf in|ft lbf|in lbf|g mm|kg mm|Pa s|mPa s|kW h|W h",
  ),
  ...joined("-", "ft lb|in lb|lb ft|lb in|ft lbs|in lbs|foot pounds|inch pounds|oz in|in oz|kg m"),
  ...joined(
    "",
    "dB (A)|dB A|fl oz|deg C|deg F|° C|° F|in Hg|mm Hg|in H2O|mm H2O|o' clock|o clock|sq in|sq ft|cu in|cu ft",
  ),
  "US gal": "galUS",
  "UK gal": "galUK",
  "degrees C": "°C",
  "degrees F": "°F",
};

function joined(sign: string, texts: string): Record<string, string> {
  return Object.fromEntries(texts.split("|").map((text) => [text, text.replace(" ", sign)]));
}

// A text from outside may be `constructor`.
function own<T>(table: Readonly<Record<string, T>>, key: string): T | undefined {
  return Object.hasOwn(table, key) ? table[key] : undefined;
}

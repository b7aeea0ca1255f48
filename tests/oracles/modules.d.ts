// What the oracles use of two libraries that come without types of their own.
declare module "@lhncbc/ucum-lhc" {
  interface Answer {
    readonly status: "succeeded" | "failed" | "error";
    readonly toVal: number | null;
  }
  interface Utilities {
    convertUnitTo(from: string, value: number, to: string): Answer;
  }
  const ucum: { readonly UcumLhcUtils: { getInstance(): Utilities } };
  export default ucum;
}

declare module "unitmath" {
  interface Unit {
    readonly value: number;
    to(unit: string): Unit;
  }
  export default function unitmath(text: string): Unit;
}

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

declare module "logic-solver" {
  /** A variable by its name, or what the functions make of such. */
  export type Operand = string | { readonly formula: never };
  interface Solver {
    require(...formulas: readonly Operand[]): void;
    /** Null where nothing fulfils it beside what is required. */
    solveAssuming(formula: Operand): object | null;
  }
  const logic: {
    readonly Solver: new () => Solver;
    readonly TRUE: Operand;
    readonly FALSE: Operand;
    and(operands: readonly Operand[]): Operand;
    or(operands: readonly Operand[]): Operand;
    not(operand: Operand): Operand;
    exactlyOne(operands: readonly Operand[]): Operand;
  };
  export default logic;
}

// Small procedures that tests of the command share.

/** Free of findings. */
export const CLEAN = `part Seal "shaft seal"

procedure FitSeal "Fit the seal" {
  step install Seal
}
`;

/** One error: `order.already-installed`, at 5:8. */
export const TWICE = `part Seal "shaft seal"

procedure FitSeal "Fit the seal" {
  step install Seal
  step install Seal
}
`;

/** One warning: `trace.unused-allow`. */
export const IDLE_ALLOW = `part Seal "shaft seal"

procedure FitSeal "Fit the seal" {
  step install Seal allow order.enclosed because "The cover is off."
}
`;

/** One hint: `units.style`. */
export const STYLE = `part Seal "shaft seal"

procedure FitSeal "Fit the seal" {
  step install Seal takes 5 minutes
}
`;

/** Errors only where Extent is Reseal. */
export const OPTIONS = `option Extent "extent of work" { Full "full overhaul"  Reseal "reseal only" }
part Seal "shaft seal"
part Cover "cover"

procedure Overhaul "Overhaul the pump" {
  finish with Cover is installed
  step install Seal
  when Extent is Full {
    step install Cover
  }
}
`;

/** Two procedures in one file. */
export const TWO = `part Seal "shaft seal"

procedure FitSeal "Fit the seal" {
  step install Seal
}

procedure TakeSeal "Take the seal out" {
  begin with Seal is installed
  step remove Seal
}
`;

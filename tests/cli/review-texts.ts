// A small shop and one procedure in it, for reviews.
export const TOOLS = `source Manual "manual" revision "3"
role Fitter "fitter"
role Inspector "inspector"
tool Wrench "torque wrench" {
  torque 8 .. 60 N·m
  accuracy 4 %
}
`;

export const CLOSING = `use "shop/tools.sprag"

part Cover "cover"
part Screw "cover screw" {
  needs Cover
  secures Cover
  torque 40 ± 3 N·m dry per Manual "6.4"
}

procedure Close "Close the cover" {
  finish with Cover is secured

  step install Cover per Manual "6.1"
  step install Screw per Manual "6.2"
  step Torque {
    tighten Screw to 40 ± 3 N·m with Wrench
    critical
    sign Fitter
    hold for Inspector
    per Manual "6.4"
  }
}
`;

export const SHOP: Readonly<Record<string, string>> = { "shop/tools.sprag": TOOLS, "close.sprag": CLOSING };

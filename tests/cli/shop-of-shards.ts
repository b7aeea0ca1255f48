// A shop whose files are checked in shards: what is found in one hangs on others, wherever these fall.

const SHOP = `part Hub "hub"
part Cover "cover" { encloses Hub }
part Pin "pin"
option Extent "extent of work" { Full Part }
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
part Screw "cover screw"
`;

/** Procedures that perform each other in a circle; what is found in them hangs on which is followed first. */
function inCircle(own: string, next: string): string {
  return `use "${next.toLowerCase()}.sprag"
part Seal${own} "seal ${own}"

procedure Fit${own} "Fit ${own}" {
  step install Seal${own}
  step perform Fit${next}
}
`;
}

/** Nothing in the file uses \`SpareSeal\`, which is told as long as no other file uses this one. */
const SPARE = `part SpareSeal "spare seal"
part Seal "seal"

procedure FitSeal "Fit the seal" {
  step install Seal
}
`;

export const SHOP_FILES: Readonly<Record<string, string>> = {
  "shop/parts.sprag": SHOP,
  "shop/crib.sprag": `use "parts.sprag"
crib MainShop "tool crib" {
  item "TW-0117" for Wrench { torque 10 .. 60 N·m  calibrated until 2027-01-31 }
}
`,
  "close.sprag": `use "shop/parts.sprag"
procedure Close "Close" {
  step install Screw
  step tighten Screw to 45 N·m with Wrench
}
`,
  "choice.sprag": `use "shop/parts.sprag"
procedure Choose "Choose" {
  finish with Cover is installed
  step install Hub
  when Extent is Full {
    step install Cover
  }
}
`,
  "allowed.sprag": `use "shop/parts.sprag"
procedure Allowed "Allowed" {
  step install Pin
  step install Pin allow order.already-installed because "Twin pins."
}
`,
  "idle.sprag": `use "shop/parts.sprag"
procedure Idle "Idle" {
  step install Pin allow order.enclosed because "Open."
}
`,
  "sub/broken.sprag": "procedure { bro ken\n step install\n",
  "sub/unknown.sprag": `use "nothing.sprag"\nprocedure Unknown "Unknown" { step install Nothing }\n`,
  "sub/é.sprag": `use "../shop/parts.sprag"\nprocedure Accents "Accents" {\n  step install Hub\n  step install Hub\n}\n`,
  "a.sprag": inCircle("A", "B"),
  "b.sprag": inCircle("B", "C"),
  "c.sprag": inCircle("C", "A"),
  "around.sprag": `use "b.sprag"\nprocedure Around "Around" {\n  step perform FitB\n  step install SealB\n}\n`,
  "spare.sprag": SPARE,
  "spare-used.sprag": SPARE,
  "user.sprag": `use "spare-used.sprag"\nprocedure Use "Use" {\n  step perform FitSeal\n  step install SpareSeal\n}\n`,
  "spare-behind.sprag": SPARE,
  "behind/user.sprag": `use "between.txt"\nprocedure Far "Far" { step perform Between }\n`,
  "behind/between.txt": `use "../spare-behind.sprag"\nprocedure Between "Between" { step perform FitSeal }\n`,
};

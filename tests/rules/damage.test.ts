// A line that could not be read is told of once, leaves in doubt what it may have done, and hides no fault elsewhere.
import { test } from "vitest";
import { expectFindings } from "#harness/check.ts";

test("a branch whose condition is lost is followed still", () => {
  expectFindings(`
option Cracked { yes no }
part Seal "seal"
procedure Look {
  when Cracked is {
  //           ^^ syntax.unexpected
    step install Seal
    step install Seal
    //   ^^^^^^^^^^^^ order.already-installed
    stop "Send it back."
    step "Wipe it."
  //^^^^^^^^^^^^^^^ flow.unreachable
  }
  step inspect Seal
}`);
});

test("what such a branch needs may be so because of its lost condition", () => {
  expectFindings(`
option Full { yes no }
part Disc "disc"
procedure Overhaul {
  when Full is yes { step install Disc }
  when Full yes { step remove Disc }
  //        ^^^ syntax.unexpected
}`);
});

test("a lost word of finish with touches no step", () => {
  expectFindings(`
part Cover "cover"
procedure Open {
  finish Cover is removed
  //     ^^^^^ syntax.unexpected
  step remove Cover
  //   ^^^^^^^^^^^^ order.not-installed
}`);
});

test("a performed procedure with an unread step leaves that in doubt, and asks no more than it did", () => {
  expectFindings(`
part Seal "seal"
part Cover "cover"
procedure CloseUp {
  finish with Seal is installed, Cover is installed
  step install Seal
  perform FitCover
}
procedure FitCover {
  finish with Cover is installed
  step Cover
  //   ^^^^^ syntax.unexpected
  step inspect Seal
}`);
});

test("what stands on a part in doubt is in doubt with it", () => {
  expectFindings(`
part Housing "housing"
part Shaft "shaft"
part Sleeve "sleeve"
part Wheel "wheel" { needs Sleeve }
procedure BuildUp {
  step press Sleeve on Shaft
  step install Shaft Housing
  //                 ^^^^^^^ syntax.unexpected
  step install Wheel
}`);
});

test("an allow may be needed where a line could not be read", () => {
  expectFindings(`
temporary part "transport lock"
//             ^^^^^^^^^^^^^^^^ syntax.unexpected
procedure Pack {
  step install TransportLock allow order.left-behind because "It stays in."
}`);
});

test("a name that swallowed what follows it is no other name", () => {
  expectFindings(`
part Screw1..4] "screw"
//         ^^ syntax.unexpected
procedure FitScrews {
  step install Screw[1..4]
}`);
});

test("a line that lost what it works on can have done only what its verb does", () => {
  expectFindings(`
part Cover "cover" { encloses Seal }
part Seal "seal"
temporary part Pin "pin"
procedure CloseUp {
  step install Seal
  step install Pin
  //   ^^^^^^^^^^^ order.left-behind
  step install
  //   ^^^^^^^ syntax.unexpected
  step clean Seal
  step install Cover
}`);
  expectFindings(`
part Seal "seal"
temporary part Pin "pin"
procedure CloseUp {
  step install Seal, Pin
  step remove
  //   ^^^^^^ syntax.unexpected
  step install Seal
}`);
});

test("a line that can have moved nothing hides no fault behind it", () => {
  expectFindings(`
role Fitter "fitter"
part Hub "hub"
procedure Wipe {
  begin with Hub is installed
  finish with Hub is installed
  step clean Hub .
  //             ^ syntax.unexpected
  step Second {
    inspect Hub
    hold Hub
    //   ^^^ syntax.unexpected
    clean Hbu
    //    ^^^ names.unknown
  }
  step install Hub
  //   ^^^^^^^^^^^ order.already-installed
}`);
});

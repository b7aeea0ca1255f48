// A `}` too many costs nothing but itself: put in behind any token of any sample, it is told once, and once what is told is mended the
// text is sound again.
import { expect, test } from "vitest";
import { plainTexts } from "#harness/samples.ts";
import { oneIn } from "#harness/thorough.ts";
import { leavesOf, type Token } from "#harness/tokens.ts";
import { parseText } from "#syntax/parse.ts";

const STRIDE = 40;
const THOROUGH_STRIDE = 4;

const places = [...plainTexts]
  .map(([path, text]) => parseText(text, path))
  .filter(({ problems }) => problems.length === 0)
  .flatMap(({ path, text, file }) =>
    leavesOf(file.$cstNode).flatMap((token, at, all) => {
      const next: Token | undefined = all[at + 1];
      // Between a number and its unit it tears the two apart.
      return next?.tokenType.name === "UNIT" ? [] : [{ path, text, at: token.end }];
    }),
  );

test("a closing brace too many is told once, and what is told mends the text", { timeout: 600_000 }, () => {
  const tried = oneIn(STRIDE, places, THOROUGH_STRIDE);
  const wrong = tried.flatMap(({ path, text, at }) => {
    const hurt = `${text.slice(0, at)} }${text.slice(at)}`;
    const place = `${path}:${text.slice(0, at).split("\n").length}`;
    const [told, ...others] = parseText(hurt, path).problems;
    // `step inspect Cover }` may as well lack its `{`.
    const slip = told?.kind === "unexpected" ? told.slip : null;
    if (told === undefined || slip === null || !/^brace (?:too many|missing)$/.test(slip.name))
      return [`${place} ${slip?.name}`];
    if (others.length > 0) return [`${place} ${others.length} more`];
    const mended = hurt.slice(0, told.span.start) + slip.mended + hurt.slice(told.span.end);
    return parseText(mended, path).problems.length === 0 ? [] : [`${place} not mended`];
  });
  console.log(`stray braces: ${tried.length - wrong.length} of ${tried.length} mended, of ${places.length} places`);
  // What stands before `use` or in front of a source can end a block in more ways than one.
  expect(wrong.slice(0, Math.floor(tried.length / 100))).toEqual(wrong);
});

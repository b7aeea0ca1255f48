// Why mutants are not noticed, as patterns: the first that fits is given. Looks at `{ file, line, text, before, words, mutatorName,
// replacement, status }`; runs nothing.

const isFallback = ({ before }) => /\?\? \(?\[?$/.test(before);

export const REASONS = [
  {
    title: "A fallback that the type checker asks for",
    because:
      "Behind `??` or `?.`, where the value is always there: an index within a list, a node that exists. Same behaviour.",
    is: (place) => isFallback(place) || place.mutatorName === "OptionalChaining" || isFallbackReplaced(place),
  },
  {
    title: "A guard that the type checker asks for",
    because: "A comparison with `undefined` or `null` where that cannot come; the guard only narrows the type.",
    is: ({ words, mutatorName }) =>
      mutatorName === "ConditionalExpression" && /^[\w.?]+ [!=]== (undefined|null)$/.test(words),
  },
  {
    title: "Only speed",
    because: "A way out early where the long way comes to the same, the key of a cache, a sign that nothing changed.",
    is: ({ text, mutatorName }) =>
      mutatorName !== "StringLiteral" &&
      /^\s*if \(.*(length === 0|=== NEVER|known !== undefined|seen\.has|=== most|=== old|=== left|absorbing|a === b).*\) (return|continue|break)|continue;$/.test(
        text,
      ),
  },
  {
    title: "Nothing reads it, or only its order",
    because:
      "The subject by which facts are put together where there is one; the name of a node at which nothing happens; a sort of what is in order.",
    is: ({ text }) => /subject: |kind: "(meet|end of task|start|look)"|\.sort\(|name = \(/.test(text),
  },
  {
    title: "What holds on no path is dropped later",
    because:
      "Whether something can be so is asked early, to save work; a fact that holds for no choice is dropped where facts are gathered.",
    is: ({ words, mutatorName }) =>
      (mutatorName === "ConditionalExpression" || mutatorName === "EqualityOperator") && /[!=]== NEVER\b/.test(words),
  },
  {
    title: "A text where only records can be",
    because:
      "An empty list with a text in it, which no type allows: what reads the list finds nothing in the text and goes on.",
    is: ({ replacement, mutatorName }) =>
      mutatorName === "ArrayDeclaration" && replacement.includes("Stryker was here"),
  },
  {
    title: "Only exact equality shows it",
    because:
      "`<` for `<=` and the like: another answer only where both sides are equal to the last digit, which no text of the tests has.",
    is: ({ words, replacement, mutatorName }) => mutatorName === "EqualityOperator" && isEdge(words, replacement),
  },
  {
    title: "How far a search goes",
    because:
      "Bounds, order and memory of searches for a way, an order or the longest time: the same is found another way, or later. Looked at by file, not one by one.",
    is: ({ file }) => /^(any-order|any-order-ways|ways|longest|endless|order-witness|decision|store)\.ts$/.test(file),
  },
  {
    title: "A rule of English that no sentence of the tests turns on",
    because: "Word endings, word lists and marks: a test by itself for each would be a test of English.",
    is: ({ file, mutatorName }) =>
      file.startsWith("wording/") &&
      /^(Regex|StringLiteral|Arithmetic|Logical|Conditional|Equality|Method)/.test(mutatorName),
  },
  {
    title: "Reached by no test",
    because: "",
    is: ({ status }) => status === "NoCoverage",
  },
  {
    title: "Not yet tested, or not yet looked at",
    because: "",
    is: () => true,
  },
];

/** The same comparison but for the case that both are equal. */
function isEdge(words, replacement) {
  const operator = (text) => / (<=|>=|<|>) /.exec(text)?.[1];
  const [before, now] = [operator(words), operator(replacement)];
  return before !== undefined && now !== undefined && before !== now && before[0] === now[0];
}

/** `a ?? b` as `a && b`, where `a` is always there and truthy or `b` is what an absent one would give. */
function isFallbackReplaced({ words, mutatorName }) {
  return mutatorName === "LogicalOperator" && / \?\? (""|0|null|\[\]|NEVER|ALWAYS)/.test(words);
}

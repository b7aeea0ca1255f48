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

/** `a ?? b` as `a && b`, where `a` is always there and truthy or `b` is what an absent one would give. */
function isFallbackReplaced({ words, mutatorName }) {
  return mutatorName === "LogicalOperator" && / \?\? (""|0|null|\[\]|NEVER|ALWAYS)/.test(words);
}

// Texts as they are while somebody types, and worse: for tests that ask at every place of them.

const GOOD = `part Cover[1..2] "cover" { mass 31 kg }
procedure Work "Work" {
  warning burn "It is hot." avoid "Wait."
  repeat n in 1, 2 { step install Cover[n] }
  step Look { inspect Cover[1] takes 3 min }
}
`;

export const HURT: Readonly<Record<string, string>> = {
  empty: "",
  blank: "\n\n  \n",
  "half-a-step": `${GOOD.slice(0, GOOD.indexOf("install") + 4)}\n}\n`,
  "open-block": GOOD.replace(/\}\n$/, ""),
  "too-many-braces": `${GOOD}}}\n`,
  "open-text": GOOD.replace('"It is hot."', '"It is hot.'),
  "line-ends": GOOD.replaceAll("\n", "\r\n"),
  astral: `// \u{1F529} loosen\n${GOOD.replace('"cover"', '"\u{1F527} cover"')}part \u{1F527} "x"\n`,
  signs: "part [ { ) .. ± 3 N·m ] } use procedure step \u0000 \uFFFD",
  "no-such-name": GOOD.replace("Cover[n]", "Covr[m + 1]").replace("3 min", "3 mni"),
};

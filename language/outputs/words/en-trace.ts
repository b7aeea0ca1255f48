// The fixed words of the matrix of sources, in English. Knows no format.

export const enTrace = {
  title: "Values and steps, and their sources",
  heads: {
    procedure: "Procedure",
    step: "Step",
    what: "What",
    written: "Value as written",
    si: "SI value",
    source: "Source",
    section: "Section",
    revision: "Revision",
    where: "Where",
  },
  step: "step",
  none: "none",
  unknown: "not known",
  what: (what: string, of: string): string => (of === "" ? what : `${what}: ${of}`),
  share: (share: string, of: string): string => `${share} of ${of}`,
  named: (value: string, names: string): string => `${value} (${names})`,
  sum: (values: number, without: number): string =>
    `${values} ${values === 1 ? "value" : "values"}, ${without} of them without a source.`,
};

// Source documents as they are cited at the bench. Knows no format.
import type { Citation } from "#model/declarations.ts";

/** `P-220 maintenance manual, 6.4.2`, once each. */
export function citationTexts(citations: readonly Citation[]): readonly string[] {
  const texts = citations.flatMap(({ source, section }) =>
    source === null ? [] : [section === "" ? source.title : `${source.title}, ${section}`],
  );
  return [...new Set(texts)];
}

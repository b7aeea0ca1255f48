// Whether two people are one: by name or by badge, however they are spelt. Knows no role.

export interface Person {
  readonly name: string;
  /** Empty where there is none. */
  readonly badge: string;
}

export function isSamePerson(a: Person, b: Person): boolean {
  const [name, badge] = [keyOf(a.name), keyOf(a.badge)];
  return (name !== "" && name === keyOf(b.name)) || (badge !== "" && badge === keyOf(b.badge));
}

/** Without capitals, blanks and signs that are not seen; full-width letters as their plain ones. */
function keyOf(text: string): string {
  return text
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[\s\p{Cf}]+/gu, "");
}

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

/** Without capitals, blanks, points and hyphens, and signs that are not seen; full-width letters as their plain ones. */
function keyOf(text: string): string {
  const plain = text
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[\s\p{Cf}]+/gu, "");
  // What is nothing but such signs is compared by them.
  return plain.replace(/\p{P}+/gu, "") || plain;
}

/**
 * A name in the two parts that the standard insists on. We keep names in one piece, as people write them; the last word
 * is taken for the family name, which is wrong for some, so the receiving system should keep its own.
 * A name of one word stands in both parts, since neither may be empty.
 */
export function splitName(name: string): { givenName: string; familyName: string } {
  const words = name.trim().split(/\s+/);
  if (words.length === 1) return { givenName: words[0]!, familyName: words[0]! };
  return { givenName: words.slice(0, -1).join(' '), familyName: words.at(-1)! };
}

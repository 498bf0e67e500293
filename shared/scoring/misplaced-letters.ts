/** A letter that is too far right (shift above 0) or left, 1/1000 em. */
export type MisplacedLetter = { letter: number; shift: number };

type Gap = { rest: number; tolerance: number; within: boolean };

/**
 * Letters whose two gaps are wrong only because the letter between them is out of place: one gap too wide, the next too
 * tight, and a shift of the letter that brings both within their tolerances, each its own. Of the shifts that do, the
 * one nearest to making both gaps equally good. Greatest shift first; no gap is explained twice.
 */
export function misplacedLetters(letters: number, gaps: readonly Gap[]): MisplacedLetter[] {
  const found: MisplacedLetter[] = [];
  for (let letter = 1; letter < letters - 1; letter += 1) {
    const before = gaps[letter - 1]!,
      after = gaps[letter]!;
    if (before.within || after.within || before.rest * after.rest >= 0) continue;
    const least = Math.max(before.rest - before.tolerance, -after.rest - after.tolerance);
    const most = Math.min(before.rest + before.tolerance, -after.rest + after.tolerance);
    if (least > most) continue;
    found.push({ letter, shift: Math.min(most, Math.max(least, (before.rest - after.rest) / 2)) });
  }
  const used = new Set<number>();
  return found
    .sort((a, b) => Math.abs(b.shift) - Math.abs(a.shift) || a.letter - b.letter)
    .filter(({ letter }) => {
      if (used.has(letter - 1) || used.has(letter)) return false;
      used.add(letter - 1).add(letter);
      return true;
    })
    .sort((a, b) => a.letter - b.letter);
}

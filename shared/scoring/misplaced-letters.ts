import type { LineMeasure, PairComparison } from '@/shared/schemas/measure';

/** A letter that stands too far right (shift above 0) or left, 1/1000 em. */
export type MisplacedLetter = { letter: number; shift: number };

/**
 * Letters whose two gaps are wrong only because the letter between them is out of place: moving it by one shift
 * brings both gaps within tolerance. Greatest shift first; no gap is explained twice.
 */
export function misplacedLetters(line: LineMeasure, pairs: PairComparison[]): MisplacedLetter[] {
  const found: MisplacedLetter[] = [];
  for (let letter = 1; letter < line.letters.length - 1; letter += 1) {
    const before = pairs[letter - 1]!,
      after = pairs[letter]!;
    if (before.within || after.within || before.rest * after.rest >= 0) continue;
    const left = Math.abs(before.rest + after.rest) / 2;
    if (left <= Math.min(before.tolerance, after.tolerance))
      found.push({ letter, shift: (before.rest - after.rest) / 2 });
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

import type { LetterShape } from '../measure/letter-shape';
import type { StemGaps } from '../measure/stem-gap';
import { type PairKind, pairKinds } from '../schemas/word-search';
import { heightOfBand } from '../outline/edge-profile';

/** A serif reaches this far out from its stem, 1/1000 em; what reaches further is an arm or a leg. */
const SERIF = { least: 18, most: 130, behind: 40 };
/** An arm hangs over a bay at least this deep, 1/1000 em. */
const ARM = 60;

/**
 * What kinds two neighbours are of, from their sides as drawn; their names `a` and `b` only tell accents and figures.
 * @param stem of the face's H: whether it has serifs at all.
 */
export function pairKindsOf(
  left: LetterShape,
  right: LetterShape,
  [a, b]: readonly [string, string],
  stem: StemGaps | null,
): PairKind[] {
  const hasSerifs = stem !== null && stem.stemToStem - stem.stemGap >= 2 * SERIF.least;
  const here = left.sides.right,
    there = right.sides.left;
  const both = (one: string, other: string) => (here === one && there === other) || (here === other && there === one);
  const is: Record<PairKind, () => boolean> = {
    'round-round': () => both('round', 'round'),
    'straight-round': () => both('straight', 'round'),
    'straight-straight': () => both('straight', 'straight'),
    // One leans as the other does: the right of A beside the left of V.
    diagonals: () => both('slanted-in', 'slanted-out'),
    'open-side': () => here === 'open' || there === 'open',
    serifs: () => hasSerifs && hasFoot(left, 'right') && hasFoot(right, 'left'),
    'accent-under-arm': () => hasArm(left) && hasMarkAbove(b),
    'one-among-figures': () => isFigure(a) && isFigure(b) && (a === '1' || b === '1'),
  };
  return pairKinds.filter((kind) => is[kind]());
}

/** A serif at the foot of a side: further out than the stem over it, and not by an arm's length. */
function hasFoot(letter: LetterShape, side: 'left' | 'right'): boolean {
  if (letter.sides[side].startsWith('slanted') || letter.sides[side] === 'round') return false;
  const foot = leastWhite(letter, side, 0, 50),
    stem = leastWhite(letter, side, 0.3 * letter.box.top, 0.45 * letter.box.top);
  // The foot of T has serifs too, but they face nobody from under its arms.
  const faces = foot - leastWhite(letter, side, 0, letter.box.top) <= SERIF.behind;
  return faces && stem - foot >= SERIF.least && stem - foot <= SERIF.most;
}

/** Something at the top right that hangs over a bay: T, V, W, Y, F, P, f. */
function hasArm(letter: LetterShape): boolean {
  if (letter.sides.right !== 'open' && letter.sides.right !== 'slanted-out') return false;
  const { top } = letter.box;
  return leastWhite(letter, 'right', 0.2 * top, 0.4 * top) - leastWhite(letter, 'right', 0.75 * top, top) >= ARM;
}

/** The least white between two heights, 1/1000 em; Infinity without ink there. */
function leastWhite({ edge }: LetterShape, side: 'left' | 'right', from: number, to: number): number {
  let least = Infinity;
  edge[side].forEach((white, band) => {
    const height = heightOfBand(band);
    if (height > from && height < to) least = Math.min(least, white);
  });
  return least;
}

/** Marks over a letter: grave to caron, without those that hang under it (Unicode, Combining Diacritical Marks). */
function hasMarkAbove(letter: string): boolean {
  return /[\u0300-\u0314]/.test(letter.normalize('NFD').slice(1));
}

function isFigure(letter: string): boolean {
  return letter >= '0' && letter <= '9';
}

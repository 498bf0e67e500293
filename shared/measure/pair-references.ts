import { median } from '@/shared/stats/median';
import type { PairGroup } from '@/shared/schemas/measure';
import { apparentGap } from './apparent-gap';
import { clearance } from './clearance';
import type { PreparedLine, PreparedPair } from './prepared-line';

/** From this many letter pairs on, a line has a middle; a shorter one says nothing of itself. */
export const ENOUGH_PAIRS = 6;
/** Nearer than this share of the stem gap two letters nearly touch. */
export const NEARLY_TOUCHING = 0.2;

/**
 * The apparent gap each pair is held against, 1/1000 em; null where nothing is.
 * Letters, capitals and figures: the middle of their own group in this line, from six pairs on; figures in a shorter
 * row, and punctuation always: the gap the face itself gives the pair, as much wider or tighter as the line's letters
 * are set. Word spaces: none; they are held against one another only. A pair that touches, crosses or nearly touches
 * makes no middle.
 * @param totals built-in + tracking + offset of each pair, 1/1000 em.
 */
export function pairReferences(line: PreparedLine, totals: readonly number[]): (number | null)[] {
  const middles = new Map<PairGroup, number | null>(
    (['letters', 'capitals', 'figures'] as const).map((group) => [
      group,
      middleGap(line, totals, (pair) => pair.group === group),
    ]),
  );
  const letters = lettersMiddle(line, totals),
    lettersBuilt = lettersMiddle(line, builtTotals(line));
  const tightness = letters !== null && lettersBuilt !== null ? letters / lettersBuilt : 1;
  return line.pairs.map((pair) => {
    const own = middles.get(pair.group) ?? null;
    if (pair.group === 'punctuation' || (pair.group === 'figures' && own === null))
      return gapOf(pair, pair.builtIn) * tightness;
    return own;
  });
}

/** The middle of the line's letter pairs; null in a line of fewer than six that are apart. */
export function lettersMiddle(line: PreparedLine, totals: readonly number[]): number | null {
  return middleGap(line, totals, ({ group }) => group === 'letters' || group === 'capitals');
}

/** The totals the face itself gives. */
export function builtTotals(line: PreparedLine): number[] {
  return line.pairs.map(({ builtIn }) => builtIn);
}

function middleGap(line: PreparedLine, totals: readonly number[], takes: (pair: PreparedPair) => boolean) {
  const near = NEARLY_TOUCHING * (line.stem?.stemGap ?? 0);
  const gaps = line.pairs.flatMap((pair, index) => {
    if (!takes(pair)) return [];
    const total = totals[index]!;
    const { distance, crossing } = clearance(pair.left, pair.right, pair.left.advance + pair.wordSpace + total);
    return crossing || distance < Math.max(1, near) ? [] : [gapOf(pair, total)];
  });
  return gaps.length < ENOUGH_PAIRS ? null : median(gaps);
}

function gapOf(pair: PreparedPair, total: number): number {
  return apparentGap(pair.white, total + pair.wordSpace);
}

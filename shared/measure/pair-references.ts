import { median } from '@/shared/stats/median';
import type { PairGroup } from '@/shared/schemas/measure';
import { nearGap } from './near-gap';
import type { PreparedLine } from './prepared-line';

/** From this many pairs of one group on, their middle is a reference. */
const ENOUGH = 3;

/**
 * The apparent gap each pair is held against, 1/1000 em; null where nothing is.
 * Letters, capitals and figures: the middle of their own group in this line, from three pairs on; figures in a shorter row,
 * and punctuation always: the gap the face itself gives the pair, as much wider or tighter as the line's letters are set.
 * Word spaces: none; they are held against one another only.
 * @param gaps apparent gap of each pair as set.
 */
export function pairReferences(line: PreparedLine, gaps: readonly number[]): (number | null)[] {
  const built = gapsAsBuilt(line);
  const middles = new Map<PairGroup, number>();
  for (const group of ['letters', 'capitals', 'figures'] as const) {
    const own = gaps.filter((_, index) => line.pairs[index]!.group === group);
    if (own.length >= ENOUGH) middles.set(group, median(own));
  }
  const letters = lettersMiddle(line, gaps),
    lettersBuilt = lettersMiddle(line, built);
  const tightness = letters !== null && lettersBuilt !== null ? letters / lettersBuilt : 1;
  return line.pairs.map(({ group }, index) => {
    if (group === 'punctuation' || (group === 'figures' && !middles.has('figures'))) return built[index]! * tightness;
    return middles.get(group) ?? null;
  });
}

/** The middle of the line's letter pairs; null when it has none. */
export function lettersMiddle(line: PreparedLine, gaps: readonly number[]): number | null {
  const own = gaps.filter(
    (_, index) => line.pairs[index]!.group === 'letters' || line.pairs[index]!.group === 'capitals',
  );
  return own.length === 0 ? null : median(own);
}

/** Apparent gap of every pair as the face sets it, built-in kerning included. */
export function gapsAsBuilt(line: PreparedLine): number[] {
  return line.pairs.map((pair) => nearGap(pair.seen, pair.builtIn + pair.wordSpace));
}

import { apparentGap, totalForGap } from './apparent-gap';
import { clearance, type Clearance } from './clearance';
import { MeasureError } from '../measure-error';
import type { PreparedLine, PreparedPair } from './prepared-line';

/**
 * Apparent gap of one pair at a total (built-in + tracking + offset), all 1/1000 em. Cheap: for every step of a drag.
 */
export function apparentGapAt(line: PreparedLine, index: number, total: number): number {
  const pair = pairOf(line, index);
  return apparentGap(pair.white, total + pair.wordSpace);
}

/** Clearance of one pair at a total, 1/1000 em. */
export function clearanceAt(line: PreparedLine, index: number, total: number): Clearance {
  const pair = pairOf(line, index);
  return clearance(pair.left, pair.right, pair.left.advance + pair.wordSpace + total);
}

/**
 * The offset at which a pair's apparent gap is `target` with the tracking given, 1/1000 em; null where no offset does
 * it.
 */
export function offsetForGap(line: PreparedLine, index: number, target: number, tracking: number): number | null {
  const pair = pairOf(line, index);
  const total = totalForGap(pair.white, target);
  return total === null ? null : total - pair.wordSpace - pair.builtIn - tracking;
}

export function pairOf(line: PreparedLine, index: number): PreparedPair {
  const pair = line.pairs[index];
  if (!pair)
    throw new MeasureError(
      'bad-input',
      `Gap ${index} was asked for, but “${line.pack.text}” has ${line.pairs.length}, counted from 0.`,
      String(index),
    );
  return pair;
}

import { pearson } from './pearson';
import { ranks } from './ranks';

/**
 * Spearman's rank correlation: Pearson's of the ranks, ties sharing their mean rank (so that it holds with ties).
 * @returns −1 to 1; null where one of the lists does not vary.
 * @throws RangeError as pearson does.
 */
export function spearman(first: readonly number[], second: readonly number[]): number | null {
  return pearson(ranks(first), ranks(second));
}

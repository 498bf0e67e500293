import type * as z from 'zod/mini';
import type { usualRangeSchema } from '@/shared/schemas/measure';

/**
 * What type designers would usually give a pair, as totals beyond the face's own sidebearings, whole 1/1000 em.
 * Half of them are expected between `halfLow` and `halfHigh`, nine tenths between `low` and `high`.
 */
export type UsualRange = z.infer<typeof usualRangeSchema>;

/** What a miss is taken from: half way between mean and middle, 1/1000 em. */
export function centreOf(range: UsualRange): number {
  return (range.mean + range.middle) / 2;
}

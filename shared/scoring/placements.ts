import type { LineMeasure, ReferenceSpacing } from '@/shared/schemas/measure';
import { median } from '@/shared/stats/median';

/** Where a line stands beside one reference, in 1/1000 em: deviations[i] = tightness + rests[i]. */
export type Placement = {
  deviations: number[];
  tightness: number;
  tightnessTolerance: number;
  rests: number[];
  tolerances: number[];
};

/** A tolerance under this counts as this where shares of it are taken, so that a tolerance of 0 does not divide by it. */
const LEAST_TOLERANCE = 1;

export function placements(line: LineMeasure, reference: ReferenceSpacing): Placement {
  const deviations = line.pairs.map(
    (pair, index) => pair.tracking + pair.offset - reference.tracking - reference.offsets[index]!,
  );
  // Gaps that hold a word space tell little about how tightly letters are set.
  const between = deviations.filter((_, index) => line.pairs[index]!.group !== 'word-space');
  const tightness = deviations.length === 0 ? 0 : median(between.length > 0 ? between : deviations);
  return {
    deviations,
    tightness,
    tightnessTolerance: reference.tolerances.length === 0 ? 0 : median(reference.tolerances),
    rests: deviations.map((deviation) => deviation - tightness),
    tolerances: reference.tolerances,
  };
}

/** Mean over the pairs of |rest| in shares of the pair's tolerance. */
export function distanceOf({ rests, tolerances }: Placement): number {
  let sum = 0;
  rests.forEach((rest, index) => {
    sum += Math.abs(rest) / Math.max(LEAST_TOLERANCE, tolerances[index]!);
  });
  return rests.length === 0 ? 0 : sum / rests.length;
}

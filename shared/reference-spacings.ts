import type { ReferenceSpacing } from '@/shared/schemas/measure';
import type { Spacing } from '@/shared/schemas/spacing';

type Take = {
  author: string;
  authorId: string;
  slot: number;
  spacing: Spacing;
  tolerances: readonly (number | null)[];
  reasons: readonly (string | null)[];
};

/** A tolerance under this would ask for finer steps than the bench has; in 1/1000 em. */
const least = 2;

/**
 * The references of one line as they are compared with: each author's first take, in the order given. Where a pair has
 * no tolerance of its own it takes the author's repeatability if they set the line more than once, else the exercise's.
 */
export function referenceSpacings(takes: readonly Take[], exerciseTolerance: number): ReferenceSpacing[] {
  const firsts = takes.filter((take) =>
    takes.every((other) => other.authorId !== take.authorId || other.slot >= take.slot),
  );
  return firsts.map((take) => {
    const own = repeatabilityOf(takes.filter(({ authorId }) => authorId === take.authorId));
    const usual = own === null ? exerciseTolerance : Math.max(least, own);
    return {
      author: take.author,
      tracking: take.spacing.tracking,
      offsets: [...take.spacing.offsets],
      tolerances: take.tolerances.map((tolerance) => tolerance ?? usual),
      reasons: [...take.reasons],
    };
  });
}

/** The repeatability of one author's takes of a line, or null with one take. */
export const repeatabilityOf = (takes: readonly { spacing: Spacing }[]): number | null =>
  repeatability(takes.map(({ spacing }) => spacing.offsets.map((offset) => spacing.tracking + offset)));

/**
 * How far apart two spacings of the same gap by the same person are to be expected, in 1/1000 em: the repeatability
 * limit 2.8 · s (ISO 5725-6:1994, 4.1.4; 2.8 stands for 1.96 · √2), where s pools the spread of all gaps of the line
 * that was set more than once: s² = Σ (x − mean of its gap)² ÷ ((gaps − 1) · (takes − 1)). Each take's own tightness
 * (its mean) is removed first, since it is judged apart; that takes one degree of freedom of every take.
 * @param takes tracking + offset of every gap, take by take; all of one length.
 * @returns null for fewer than two takes or two gaps.
 * @example repeatability([[0, 10, 20, 30], [4, 6, 24, 26]]) // 9: every gap is 4 apart, s = √(32 ÷ 3), 2.8 · s = 9.14
 */
export function repeatability(takes: readonly (readonly number[])[]): number | null {
  const gaps = takes[0]?.length ?? 0;
  if (takes.some((take) => take.length !== gaps))
    throw new RangeError(
      `Takes of one line have one length, but these have ${takes.map(({ length }) => length).join(', ')} gaps.`,
    );
  if (takes.length < 2 || gaps < 2) return null;
  const centred = takes.map((take) => take.map((value) => value - mean(take)));
  let squares = 0;
  for (let gap = 0; gap < gaps; gap++) {
    const settings = centred.map((take) => take[gap]!);
    const middle = mean(settings);
    for (const setting of settings) squares += (setting - middle) * (setting - middle);
  }
  return Math.round(limit * Math.sqrt(squares / ((gaps - 1) * (takes.length - 1))));
}

const limit = 2.8;

function mean(values: readonly number[]): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum / values.length;
}

import type { ReferenceSpacing } from '@/shared/schemas/measure';
import type { Spacing } from '@/shared/schemas/spacing';
import { repeatability } from './repeatability';

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

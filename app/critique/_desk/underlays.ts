'use client';
import type { DeskLine } from '@/shared/critique/desk';
import type { Spacing } from '@/shared/schemas/spacing';

/** What can be laid under the line, in turn: the round before, each reference, the face as it comes. */
export function underlaysOf({ previous, references, spacing }: DeskLine): { label: string; spacing: Spacing }[] {
  return [
    ...(previous ? [{ label: `round ${previous.round}, proof ${previous.proof}`, spacing: previous.spacing }] : []),
    ...references.map(({ author, slot, spacing: set }) => ({
      label: `the reference by ${author}${slot > 1 ? ` (take ${slot})` : ''}`,
      spacing: set,
    })),
    { label: 'built-in', spacing: { tracking: 0, offsets: spacing.offsets.map(() => 0) } },
  ];
}

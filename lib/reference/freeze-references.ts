import type { Context } from '@/lib/access/operation';
import type { FrozenItem } from '@/lib/data/reference-sets';
import { retryOnConflict } from '@/lib/data/retry';
import { canonicalJson } from '@/shared/text/canonical-json';
import { isStarted } from '../rows/reference';

export type Frozen = { referenceSetId: string | null; number: number; fresh: boolean };

/**
 * Freezes the references of an exercise as they stand into the next numbered set, unless they stand as in the last one.
 * Where there never was a reference there is no set. Comparisons name the set they were made with.
 */
export const freezeReferences = (context: Context, exerciseId: string): Promise<Frozen> =>
  retryOnConflict(async () => {
    const { data, now } = context;
    const [references, latest] = await Promise.all([
      data.references.ofExercise(exerciseId),
      data.referenceSets.latest(exerciseId),
    ]);
    const items = references.filter((one) => !isStarted(one)).map(frozen);
    const number = latest?.number ?? 0;
    const unchanged = fingerprint(items) === fingerprint((latest?.items ?? []).map(frozen));
    if (unchanged) return { referenceSetId: latest?.id ?? null, number, fresh: false };
    const exercise = await data.exercises.find(exerciseId);
    const member = exercise && (await data.exercises.myMember(exercise.courseId));
    const referenceSetId = await data.referenceSets.create(exerciseId, number + 1, member?.id ?? null, items, now);
    await data.audit.record(
      {
        courseId: exercise?.courseId ?? null,
        verb: 'reference set made',
        subject: `exercise:${exerciseId}`,
        details: { number: number + 1, references: items.length },
      },
      now,
    );
    return { referenceSetId, number: number + 1, fresh: true };
  });

const frozen = ({
  specimenVersionId,
  authorId,
  slot,
  tracking,
  offsets,
  tolerances,
  reasons,
}: FrozenItem): FrozenItem => ({ specimenVersionId, authorId, slot, tracking, offsets, tolerances, reasons });

const fingerprint = (items: readonly FrozenItem[]): string =>
  canonicalJson([...items].map((item) => canonicalJson(item)).sort());

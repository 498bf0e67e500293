import * as z from 'zod/mini';
import type { Context } from '@/lib/access/operation';
import type { FrozenItem } from '@/lib/data/references';
import { retryOnConflict } from '@/lib/data/retry';
import { settingsOf } from '@/lib/rows/exercise';
import { referenceSpacings } from '@/shared/reference-spacings';
import { teaches } from '@/shared/schemas/course';
import { exerciseSettingsSchema } from '@/shared/schemas/exercise';
import type { ReferenceSpacing } from '@/shared/schemas/measure';
import { canonicalJson } from '@/shared/text/canonical-json';
import { isStarted, referenceView, type ReferenceView } from '@/lib/rows/reference';

/**
 * The references of an exercise that the actor may see, by specimen version: frozen ones, in the form used for
 * comparison. Staff always; students never before the exercise's setting allows it, and after a release exactly those
 * that the release was made with. An empty map is the answer in every other case, so that it reveals nothing.
 */
export async function visibleReferences(
  context: Context,
  exerciseId: string,
): Promise<Map<string, ReferenceSpacing[]>> {
  const { data } = context;
  const exercise = await data.exercises.find(exerciseId);
  const member = exercise && (await data.exercises.myMember(exercise.courseId));
  if (!exercise || !member) return new Map();
  const settings = settingsOf(exercise);
  const set = !teaches(member.role)
    ? await setForStudent(context, exerciseId, member.id, settings.referencesShown)
    : await data.referenceSets.latest(exerciseId);
  return byVersion((set?.items ?? []).map(referenceView), settings.tolerance);
}

async function setForStudent(
  { data }: Context,
  exerciseId: string,
  memberId: string,
  shown: 'never' | 'after-release' | 'always',
) {
  if (shown === 'never') return null;
  const release = await data.referenceSets.releasedTo(exerciseId, memberId);
  if (release?.referenceSetId) return data.referenceSets.find(release.referenceSetId);
  return shown === 'always' ? data.referenceSets.latest(exerciseId) : null;
}

/**
 * Frozen items grouped by the line they belong to, always in the same order: of two equally near, the first is named.
 */
function byVersion(frozen: readonly ReferenceView[], exerciseTolerance: number): Map<string, ReferenceSpacing[]> {
  const items = [...frozen].sort((a, b) =>
    a.authorId === b.authorId ? a.slot - b.slot : a.authorId < b.authorId ? -1 : 1,
  );
  const versions = [...new Set(items.map(({ specimenVersionId }) => specimenVersionId))];
  return new Map(
    versions.map((id) => [
      id,
      referenceSpacings(
        items.filter(({ specimenVersionId }) => specimenVersionId === id),
        exerciseTolerance,
      ),
    ]),
  );
}

/**
 * The references of a frozen set in the form the core compares with, by specimen version. `settings`: the exercise's,
 * as stored. Authors are given by member id: a comparison is stored for good, and names are added only when it is
 * shown.
 */
export function frozenReferences(
  items: readonly Parameters<typeof referenceView>[0][],
  settings: string,
): Map<string, ReferenceSpacing[]> {
  const { tolerance } = z.parse(exerciseSettingsSchema, JSON.parse(settings));
  return byVersion(
    items.map(referenceView).map((view) => ({ ...view, author: view.authorId })),
    tolerance,
  );
}

export type FrozenReferences = { referenceSetId: string | null; number: number; fresh: boolean };

/**
 * Freezes the present references of an exercise as the next numbered set, unless they are the same as in the last one.
 * Without any reference there is no set. Comparisons name the set they were made with.
 */
export const freezeReferences = (context: Context, exerciseId: string): Promise<FrozenReferences> =>
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

import type { Context } from '@/lib/access/operation';
import { settingsOf } from '@/lib/rows/exercise';
import { referenceSpacings } from '@/shared/reference/reference-spacings';
import type { ReferenceSpacing } from '@/shared/schemas/measure';
import { referenceView, type ReferenceView } from '../rows/reference';

/**
 * The references of an exercise that the actor may see, by specimen version: frozen ones, in the form they are compared
 * with. Staff always; students never before the exercise's setting allows it, and after a release exactly those that
 * the release was made with. An empty map is the answer for everything else, so that nothing can be told from it.
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
  const set =
    member.role === 'student'
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

/** Frozen items grouped by the line they belong to, always in the same order: of two equally near, the first is named. */
export function byVersion(
  frozen: readonly ReferenceView[],
  exerciseTolerance: number,
): Map<string, ReferenceSpacing[]> {
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

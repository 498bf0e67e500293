import { operation, type Context } from '@/lib/access/operation';
import { retryOnConflict } from '@/lib/data/retry';
import { newReferenceSet } from '@/lib/reference/new-reference-set';
import { moveByMap } from '@/shared/exercise/pair-map';
import { changeSpecimenInput } from '@/shared/schemas/specimen';
import { changedMeanwhile } from '../access/errors';
import { planChange, type PlannedChange } from './plan-change';

/**
 * Makes a new version of a specimen. Drafts move to it pair by pair, references are copied to it the same way, and
 * proofs keep the version they were sent on. All of it or none.
 */
export const changeSpecimen = operation({
  name: 'change-specimen',
  allow: 'exercise:plan',
  input: changeSpecimenInput,
  run: async (context, { specimenId, number, ...typed }) => {
    const planned = await planChange(context, specimenId, typed);
    const exerciseId = planned.exercise.id;
    if (planned.before.number !== number) throw changedMeanwhile('this line');
    if (planned.same) return { exerciseId, specimenId, number, moved: 0 };
    // A student's change that came in between makes a unique key fail, and the whole is done again with it.
    const moved = await retryOnConflict(() =>
      context.data.transaction((data) => carryOut({ ...context, data }, specimenId, planned)),
    );
    if (planned.exercise.state !== 'draft') await newReferenceSet(context, exerciseId);
    return { exerciseId, specimenId, number: number + 1, moved };
  },
});

async function carryOut(
  { data, now }: Context,
  specimenId: string,
  { exercise, before, after, pack, map }: PlannedChange,
): Promise<number> {
  const current = await data.specimens.find(specimenId);
  if (current?.versions[0]?.id !== before.versionId) throw changedMeanwhile('this line');
  const versionId = await data.specimens.addVersion(
    { ...after, specimenId, number: before.number + 1, previousId: before.versionId, pairMap: map },
    now,
  );
  const pairs = pack.letters.length - 1;
  const drafts = await data.specimens.drafts(before.versionId);
  for (const draft of drafts) {
    await data.specimens.moveDraft(
      draft,
      versionId,
      moveByMap(JSON.parse(draft.offsets) as number[], map, pairs, 0),
      now,
    );
  }
  for (const reference of await data.references.ofVersion(before.versionId)) {
    await data.references.copy(
      reference,
      versionId,
      {
        spacing: {
          tracking: reference.tracking,
          offsets: moveByMap(JSON.parse(reference.offsets) as number[], map, pairs, 0),
        },
        tolerances: moveByMap(JSON.parse(reference.tolerances) as (number | null)[], map, pairs, null),
        reasons: moveByMap(JSON.parse(reference.reasons) as (string | null)[], map, pairs, null),
        carriedFromId:
          map.every((place) => place !== null) && map.length === pairs ? reference.carriedFromId : reference.id,
      },
      now,
    );
  }
  await data.audit.record(
    {
      courseId: exercise.courseId,
      verb: 'line changed',
      subject: `specimen:${specimenId}`,
      details: { number: before.number + 1, drafts: drafts.length },
    },
    now,
  );
  return drafts.length;
}

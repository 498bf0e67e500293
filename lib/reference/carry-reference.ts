import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { retryOnConflict } from '@/lib/data/retry';
import { faceName, specimenView, versionView } from '@/lib/rows/specimen';
import { moveByMap } from '@/shared/exercise/pair-map';
import { carryReferenceInput } from '@/shared/schemas/reference';
import { carrySpacing } from './carry-spacing';
import { referenceView } from '../rows/reference';

/**
 * Carries a reference to other specimens of the exercise as a start of the actor's own. Each counts only once its
 * author has opened it on the bench. Where the actor has one already it is left alone, unless `replace`.
 */
export const carryReference = operation({
  name: 'carry-reference',
  allow: 'reference:set',
  input: carryReferenceInput,
  run: async ({ data, now }, { referenceId, specimenIds, replace }) => {
    const row = await data.references.find(referenceId);
    if (!row) throw notFound();
    const from = versionView(row.specimenVersion);
    const reference = referenceView(row);
    const exerciseId = row.specimenVersion.specimen.exerciseId;
    const exercise = await data.exercises.find(exerciseId);
    const member = exercise && (await data.exercises.myMember(exercise.courseId));
    if (!member) throw notFound();
    const all = await data.specimens.ofExercise(exerciseId);
    const carried: string[] = [];
    const left: string[] = [];
    for (const id of specimenIds) {
      const found = all.find((one) => one.id === id);
      if (!found) throw notFound();
      const to = specimenView(found);
      const name = `“${to.text}” in ${faceName(to.pack)}`;
      const start = carrySpacing(reference.spacing, from, to);
      if (start.map.every((place) => place === null))
        throw new AppError(
          'INVALID',
          `${name} has no pair of “${from.text}”, so there is nothing to carry. Choose lines with the same text.`,
        );
      const content = {
        spacing: start.spacing,
        tolerances: moveByMap(reference.tolerances, start.map, to.pairCount, null),
        reasons: moveByMap(reference.reasons, start.map, to.pairCount, null),
        carriedFromId: referenceId,
      };
      const key = { specimenVersionId: to.versionId, authorId: member.id, slot: 1 };
      const done = await retryOnConflict(async () => {
        const there = await data.references.byKey(key);
        if (!there) return Boolean(await data.references.create(key, content, now));
        return (
          (replace || there.carriedFromId !== null) && data.references.change(there.id, there.version, content, now)
        );
      });
      (done ? carried : left).push(name);
    }
    return { exerciseId, carried, left };
  },
});

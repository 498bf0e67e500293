import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { settingsOf } from '@/lib/rows/exercise';
import { specimenView } from '@/lib/rows/specimen';
import { repeatabilityOf } from '@/shared/reference-spacings';
import { referenceBenchInput } from '@/shared/schemas/reference';
import { isStarted, referenceView } from '@/lib/rows/reference';

/** A line to be set as a reference: the actor's own work in a slot, and the references of others. */
export const getReferenceBench = operation({
  name: 'get-reference-bench',
  allow: 'reference:set',
  input: referenceBenchInput,
  run: async ({ data }, { specimenId, slot }) => {
    const row = await data.specimens.find(specimenId);
    const member = row && (await data.exercises.myMember(row.exercise.courseId));
    if (!member) throw notFound();
    const specimen = specimenView(row);
    const rows = await data.references.ofVersion(specimen.versionId);
    const all = rows.map((one) => ({
      ...referenceView(one),
      version: one.version,
      started: isStarted(one),
      updatedAt: one.updatedAt,
    }));
    const mine = all.filter(({ authorId }) => authorId === member.id);
    const order = await data.specimens.ofExercise(row.exerciseId);
    const at = order.findIndex(({ id }) => id === specimenId);
    return {
      exercise: {
        id: row.exerciseId,
        title: row.exercise.title,
        state: row.exercise.state,
        settings: settingsOf(row.exercise),
      },
      course: row.exercise.course,
      specimen,
      memberId: member.id,
      own: mine.find((one) => one.slot === slot) ?? null,
      firstTake: mine.some((one) => one.slot === 1 && !one.started),
      /** How far apart this person's takes are to be expected; null with one take. */
      repeatability: repeatabilityOf(mine),
      /** The author doesn't see the first reference while making the second: it is to be made anew. */
      others: all.filter((one) => one.slot === 1 && !one.started && one.authorId !== member.id),
      previousId: order[at - 1]?.id ?? null,
      nextId: order[at + 1]?.id ?? null,
    };
  },
});

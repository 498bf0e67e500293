import { AppError } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { isTaken } from '@/lib/data/retry';
import { proofInHand } from '@/lib/critique/proof-in-hand';
import { criterionView } from '@/lib/exercise/read-exercise';
import { giveMarkSchema, type MarkView } from '@/shared/schemas/mark';
import { claim } from './claim-proof';

/**
 * Sets the level of one criterion, or takes it back. Every change is kept with its author and, where a level is changed,
 * the reason. Who read an older mark changes nothing and is told what it is now.
 */
export const giveMark = operation({
  name: 'give-mark',
  allow: 'mark:give',
  input: giveMarkSchema,
  run: async ({ data, now }, { proofId: token, criterionVersionId, level, version, why }): Promise<MarkView> => {
    const hand = await proofInHand(data, token);
    const { me, proof, course } = hand;
    const criterion = (await data.criteria.ofExercise(hand.exercise.id))
      .map(criterionView)
      .find(({ versionId }) => versionId === criterionVersionId);
    if (!criterion)
      throw new AppError(
        'CONFLICT',
        'The criteria of this exercise were changed. Reload the page to mark by the present ones; notes are kept.',
      );
    if (level !== null && level >= criterion.levels.length) {
      throw new AppError(
        'INVALID',
        `“${criterion.title}” has ${criterion.levels.length} levels; level ${level + 1} is not among them. Choose one that is shown.`,
      );
    }
    if (hand.two === 'done')
      throw new AppError(
        'CONFLICT',
        'Both markers have finished this proof and can see each other’s marks, so these stand as they were given. What should count instead is settled, with a reason, on the page about agreement.',
      );
    const { taskId } = await claim(data, hand, now);
    const given = (await data.marks.ofTasks([taskId])).find((mark) => mark.criterionVersionId === criterionVersionId);
    if ((given?.version ?? -1) !== version) throw changed(criterion, given?.level ?? null);
    if (given && given.level !== null && given.level !== level && why === '') {
      throw new AppError(
        'INVALID',
        `“${criterion.title}” was marked “${criterion.levels[given.level]!.title}”. Say in a few words why it changes; the reason is kept with the mark.`,
        { fields: { why: 'A reason is needed to change a mark.' } },
      );
    }
    const before = given?.level ?? null;
    const verb = before === null ? 'mark given' : level === null ? 'mark taken back' : 'mark changed';
    try {
      await data.transaction(async (inside) => {
        const markId = given ? given.id : await inside.marks.create(taskId, criterionVersionId, level, now);
        if (given && !(await inside.marks.change(given.id, given.version, level, now)))
          throw changed(criterion, before);
        await inside.marks.addEvent({ markId, whoId: me.id, why, before, after: level, at: now });
        // The reason stays with the mark, where erasing a person reaches it; nothing reaches the log.
        await inside.audit.record(
          {
            courseId: course.id,
            verb,
            subject: `mark:${markId}`,
            details: { proof: proof.id, marking: hand.slot, criterion: criterion.title, before, after: level },
          },
          now,
        );
      });
    } catch (error) {
      throw isTaken(error) ? changed(criterion, null) : error;
    }
    return { criterionVersionId, level, version: version + 1 };
  },
});

function changed(
  { title, levels }: { title: string; levels: readonly { title: string }[] },
  level: number | null,
): AppError {
  const now = level === null ? 'not marked' : `“${levels[level]!.title}”`;
  return new AppError(
    'CONFLICT',
    `“${title}” was changed meanwhile; when last read it was ${now}. Reload the page to see it as it stands, then mark again.`,
  );
}

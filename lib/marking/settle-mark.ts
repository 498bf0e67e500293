import { AppError } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { settledSlot, tasksFor } from '@/lib/critique/mark-tasks';
import { proofInHand, type ProofInHand } from '@/lib/critique/proof-in-hand';
import { tokenOf } from '@/lib/critique/shown-as';
import { isTaken } from '@/lib/data/retry';
import { criterionView, type CriterionView } from '@/lib/exercise/read-exercise';
import { settleMarkSchema } from '@/shared/schemas/settle';

/**
 * Sets the level that counts by one criterion once both markers have finished, with a reason and the name of whoever does
 * it. The two markers' own marks stay as they were given. Who read an older state changes nothing.
 */
export const settleMark = operation({
  name: 'settle-mark',
  allow: 'mark:settle',
  input: settleMarkSchema,
  run: async ({ data, now }, { proof: token, criterionVersionId, level, version, why }) => {
    const hand = await proofInHand(data, token);
    const { proof, round, exercise, course, me } = hand;
    refuseUnlessReady(hand);
    const criterion = (await data.criteria.ofExercise(exercise.id))
      .map(criterionView)
      .find(({ versionId }) => versionId === criterionVersionId);
    if (!criterion)
      throw new AppError(
        'CONFLICT',
        'The criteria of this exercise were changed. The page shows the present ones; settle by those.',
      );
    if (level !== null && level >= criterion.levels.length) {
      throw new AppError(
        'INVALID',
        `“${criterion.title}” has ${criterion.levels.length} levels; level ${level + 1} is not among them. Choose one that is shown.`,
      );
    }
    const task = (await tasksFor(data, round.id, [proof.id], now, settledSlot)).get(proof.id)!;
    const given = (await data.marks.ofTasks([task.id])).find((mark) => mark.criterionVersionId === criterionVersionId);
    const before = given?.level ?? null;
    if ((given?.version ?? -1) !== version) throw changed(criterion, before);
    const verb =
      level === null ? 'settled level taken back' : before === null ? 'difference settled' : 'settled level changed';
    try {
      await data.transaction(async (inside) => {
        const markId = given ? given.id : await inside.marks.create(task.id, criterionVersionId, level, now);
        if (given && !(await inside.marks.change(given.id, given.version, level, now)))
          throw changed(criterion, before);
        await inside.markTasks.settledBy(task.id, me.id, now);
        await inside.marks.addEvent({ markId, whoId: me.id, why, before, after: level, at: now });
        // The reason stays with the mark, where erasing a person reaches it; nothing reaches the log.
        await inside.audit.record(
          {
            courseId: course.id,
            verb,
            subject: `mark:${markId}`,
            details: { proof: proof.id, marking: settledSlot, criterion: criterion.title, before, after: level },
          },
          now,
        );
      });
    } catch (error) {
      throw isTaken(error) ? changed(criterion, null) : error;
    }
    return {
      exerciseId: exercise.id,
      roundNumber: round.number,
      token: tokenOf({ proofId: proof.id, alias: hand.first?.alias ?? token }, hand.hidden),
    };
  },
});

/** An instructor may settle, and each of the two who marked the proof. */
export const maySettle = ({ me, first, second }: Pick<ProofInHand, 'me' | 'first' | 'second'>): boolean =>
  me.role === 'instructor' || me.id === first?.markerId || me.id === second?.markerId;

function refuseUnlessReady(hand: ProofInHand): void {
  if (hand.two === 'none')
    throw new AppError('CONFLICT', 'One person marks this proof, so there is nothing to settle.');
  if (hand.two === 'waits')
    throw new AppError(
      'CONFLICT',
      'Both markers have to finish this proof before anything is settled; until then neither sees the other’s marks.',
    );
  if (!maySettle(hand))
    throw new AppError('CONFLICT', 'The instructor settles differences, or one of the two who marked this proof.');
}

function changed({ title, levels }: CriterionView, level: number | null): AppError {
  const now = level === null ? 'not settled' : `“${levels[level]!.title}”`;
  return new AppError(
    'CONFLICT',
    `“${title}” was settled meanwhile; when last read it was ${now}. The page shows it as it stands; look and settle again.`,
  );
}

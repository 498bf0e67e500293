import * as z from 'zod/mini';
import { AppError } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { roundOnly } from '@/shared/schemas/critique';
import { roundInHand } from './round-in-hand';

/** From now on the proof that counts stays the one it is, whatever students send after. */
export const beginMarking = operation({
  name: 'begin-marking',
  allow: 'critique:write',
  input: z.extend(roundOnly, { version: z.coerce.number().check(z.int(), z.gte(0)) }),
  run: async ({ data, now }, { exerciseId, roundNumber, version }) => {
    const { round, course } = await roundInHand(data, exerciseId, roundNumber);
    if (round.markingStartedAt !== null) return { startedAt: round.markingStartedAt };
    return data.transaction(async (inside) => {
      if (!(await inside.markTasks.startMarking(round.id, version, now))) {
        throw new AppError(
          'CONFLICT',
          'The round was changed while you looked at it. The page shows it as it is now; begin marking from there.',
        );
      }
      await inside.audit.record({ courseId: course.id, verb: 'marking begun', subject: `round:${round.id}` }, now);
      return { startedAt: now };
    });
  },
});

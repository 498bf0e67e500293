import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { retryOnConflict } from '@/lib/data/retry';
import { extendRoundInput } from '@/shared/schemas/exercise';
import { meantTime, type MeantTime } from './local-time';

/** Gives one student a due date of their own, which counts where it is later than the round's. */
export const extendRound = operation({
  name: 'extend-round',
  allow: 'exercise:plan',
  input: extendRoundInput,
  run: async ({ data, now }, { roundId, memberId, dueLocal }) => {
    const round = await data.rounds.find(roundId);
    if (!round) throw notFound();
    const due = meant(dueLocal, round.exercise.course.timeZone);
    if (round.dueAt === null)
      throw new AppError('INVALID', `Round ${round.number} has no due date, so there is none to extend.`);
    if (due.at <= round.dueAt)
      throw wrong(
        `${dueLocal.replace('T', ' ')} is not later than the round’s own due date (${round.dueLocal?.replace('T', ' ') ?? ''}), so it would give no time.`,
      );
    const given = await retryOnConflict(() => data.rounds.extend(roundId, memberId, { dueLocal, dueAt: due.at }, now));
    if (!given) throw notFound();
    await data.audit.record(
      {
        courseId: round.exercise.courseId,
        verb: 'due date extended',
        subject: `member:${memberId}`,
        details: { round: round.number, due: dueLocal },
      },
      now,
    );
    return { exerciseId: round.exerciseId, roundId, remark: due.remark };
  },
});

function meant(local: string, zone: string): MeantTime {
  try {
    return meantTime(local, zone, 'due');
  } catch (error) {
    if (error instanceof RangeError) throw wrong(error.message);
    throw error;
  }
}

const wrong = (said: string): AppError => new AppError('INVALID', said, { fields: { dueLocal: said } });

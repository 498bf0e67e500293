import { AppError, changedMeanwhile, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { retryOnConflict } from '@/lib/data/retry';
import type { RoundFields } from '@/lib/data/rounds';
import {
  addRoundInput,
  changeRoundInput,
  endExtensionInput,
  extendRoundInput,
  removeRoundInput,
  roundOnly,
  type TypedRound,
} from '@/shared/schemas/exercise';
import { datesForSection, type SectionDates } from '@/shared/exercise/rounds';
import { exerciseView, lateRuleOf, roundView } from '@/lib/rows/exercise';
import { findExercise } from './exercises';
import { meantTime, type MeantTime } from './local-time';

/** One round with the students' own due dates, for the page that changes it. */
export const getRound = operation({
  name: 'get-round',
  allow: 'exercise:plan',
  input: roundOnly,
  run: async ({ data }, { roundId }) => {
    const row = await data.rounds.find(roundId);
    if (!row) throw notFound();
    const [rounds, extensions, students, sections] = await Promise.all([
      data.rounds.ofExercise(row.exerciseId),
      data.rounds.extensions(row.exerciseId),
      data.members.countStudents(row.exercise.courseId, ''),
      data.rounds.sectionsOf(roundId),
    ]);
    return {
      round: roundView(row),
      exercise: exerciseView(row.exercise),
      courseId: row.exercise.course.id,
      timeZone: row.exercise.course.timeZone,
      students: students.all,
      /** Every section of the course; which have dates of their own is said with the round. */
      sections,
      isLast: rounds.at(-1)?.id === roundId,
      extensions: extensions
        .filter((one) => one.roundId === roundId)
        .map(({ id, dueAt, dueLocal, member }) => ({ id, dueAt, dueLocal, name: nameOf(member) })),
    };
  },
});

const nameOf = (member: { user: { name: string } | null }): string => member.user?.name ?? 'a former member';

/** Puts another round at the end. Result: what had to be decided where the clocks change. */
export const addRound = operation({
  name: 'add-round',
  allow: 'exercise:plan',
  input: addRoundInput,
  run: async (context, { exerciseId, ...typed }) => {
    const exercise = await findExercise(context, exerciseId);
    const { fields, remarks } = typedRound(typed, exercise.course.timeZone);
    const roundId = await retryOnConflict(() => context.data.rounds.add(exerciseId, fields));
    return { exerciseId, roundId, remarks };
  },
});

/** Name, dates and late rule of a round that has not been released. */
export const changeRound = operation({
  name: 'change-round',
  allow: 'exercise:plan',
  input: changeRoundInput,
  run: async ({ data }, { roundId, version, ...typed }) => {
    const round = await data.rounds.find(roundId);
    if (!round) throw notFound();
    if (round.state === 'released')
      throw new AppError(
        'CONFLICT',
        `Round ${round.number} has been released, so its dates are fixed. Add another round for more work.`,
      );
    const { fields, remarks } = typedRound(typed, round.exercise.course.timeZone);
    refuseUndone(fields, round.sections);
    if (!(await data.rounds.change(roundId, version, fields))) throw changedMeanwhile(`round ${round.number}`);
    return { exerciseId: round.exerciseId, roundId, remarks };
  },
});

/** A section that inherits one of the round's dates must still open before it is due. */
function refuseUndone(fields: RoundFields, sections: readonly (SectionDates & { section: { name: string } })[]): void {
  const undone = sections.find(({ sectionId }) => {
    const { opensAt, dueAt } = datesForSection({ ...fields, markingStartedAt: null, sections }, sectionId);
    return opensAt !== null && dueAt !== null && dueAt <= opensAt;
  });
  if (!undone) return;
  throw wrong(
    'dueLocal',
    `With these dates the round would be due for ${undone.section.name} before it opens there. Change the dates of ${undone.section.name} first.`,
  );
}

/** Removes the last round, if no proof has been sent to it. */
export const removeRound = operation({
  name: 'remove-round',
  allow: 'exercise:plan',
  input: removeRoundInput,
  run: async ({ data }, { roundId, version }) => {
    const round = await data.rounds.find(roundId);
    if (!round) throw notFound();
    const rounds = await data.rounds.ofExercise(round.exerciseId);
    if (rounds.at(-1)?.id !== roundId)
      throw new AppError('CONFLICT', `Only the last round can be deleted, and round ${round.number} is not the last.`);
    if (!(await data.rounds.remove(roundId, version))) {
      throw new AppError(
        'CONFLICT',
        `Round ${round.number} was kept: a proof was sent to it, or it was changed, since you opened this page.`,
      );
    }
    return { exerciseId: round.exerciseId };
  },
});

/** Gives one student a due date of their own, which counts where it is later than the round's. */
export const extendRound = operation({
  name: 'extend-round',
  allow: 'exercise:plan',
  input: extendRoundInput,
  run: async ({ data, now }, { roundId, memberId, dueLocal }) => {
    const round = await data.rounds.find(roundId);
    if (!round) throw notFound();
    const due = dueInstant(dueLocal, round.exercise.course.timeZone);
    const part = await data.rounds.partOf(roundId, memberId);
    if (!part) throw notFound();
    const plain = datesForSection({ ...round, lateRule: lateRuleOf(round) }, part.sectionId);
    if (plain.dueAt === null)
      throw new AppError('INVALID', `Round ${round.number} has no due date, so there is none to extend.`);
    if (due.at <= plain.dueAt) {
      const own = round.sections.find(({ sectionId, dueAt }) => sectionId === part.sectionId && dueAt !== null);
      throw wrongDue(
        `${dueLocal.replace('T', ' ')} is not later than the ${own ? `due date of ${own.section.name}` : 'round’s own due date'} (${(own ?? round).dueLocal?.replace('T', ' ') ?? ''}), so it would give no time.`,
      );
    }
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

function dueInstant(local: string, zone: string): MeantTime {
  try {
    return meantTime(local, zone, 'due');
  } catch (error) {
    if (error instanceof RangeError) throw wrongDue(error.message);
    throw error;
  }
}

const wrongDue = (inWords: string): AppError => new AppError('INVALID', inWords, { fields: { dueLocal: inWords } });

/** Takes a student's own due date away; the round's holds again. */
export const endExtension = operation({
  name: 'end-extension',
  allow: 'exercise:plan',
  input: endExtensionInput,
  run: async ({ data, now }, { extensionId }) => {
    const ended = await data.rounds.endExtension(extensionId);
    if (!ended) throw notFound();
    await data.audit.record(
      {
        courseId: ended.courseId,
        verb: 'extension ended',
        subject: `member:${ended.memberId}`,
        details: { round: ended.roundNumber },
      },
      now,
    );
    return { extensionId };
  },
});

/**
 * The columns of a round from what was typed, in the course's zone, and what had to be decided about the clocks.
 * @throws AppError INVALID with a text per field when the dates are out of order.
 */
function typedRound(typed: TypedRound, timeZone: string): { fields: RoundFields; remarks: string[] } {
  const opens = meant(typed.opensLocal, timeZone, 'opensLocal', 'opens');
  const due = meant(typed.dueLocal, timeZone, 'dueLocal', 'due');
  const until = typed.accept === 'until' ? meant(typed.untilLocal, timeZone, 'untilLocal', 'due') : null;
  if (opens && due && due.at <= opens.at)
    throw wrong(
      'dueLocal',
      `The round would be due (${inWords(due)}) before it opens (${inWords(opens)}). Give a later due date.`,
    );
  if (typed.accept === 'until' && !due)
    throw wrong('dueLocal', 'A last date for late proofs needs a due date before it.');
  if (typed.accept === 'until' && !until)
    throw wrong('untilLocal', 'Give the last date on which a late proof is taken, or choose another rule.');
  if (until && due && until.at <= due.at)
    throw wrong(
      'untilLocal',
      `The last date for late proofs (${inWords(until)}) is not after the due date (${inWords(due)}).`,
    );
  const lateRule = {
    accept: typed.accept,
    untilLocal: until?.local ?? null,
    untilAt: until?.at.toISOString() ?? null,
    deductPerDay: typed.accept === 'none' ? 0 : typed.deductPerDay,
  };
  return {
    fields: {
      title: typed.title,
      opensLocal: opens?.local ?? null,
      opensAt: opens?.at ?? null,
      dueLocal: due?.local ?? null,
      dueAt: due?.at ?? null,
      lateRule,
    },
    remarks: [opens, due, until].flatMap((time) => time?.remark ?? []),
  };
}

/** A typed time in the course's zone; null for an empty field. @throws AppError INVALID with a text for the field. */
export function meant(local: string, zone: string, field: string, use: 'opens' | 'due'): MeantTime | null {
  if (local === '') return null;
  try {
    return meantTime(local, zone, use);
  } catch (error) {
    if (error instanceof RangeError) throw wrong(field, error.message);
    throw error;
  }
}

export const inWords = ({ local }: MeantTime): string => local.replace('T', ' ');

export const wrong = (field: string, text: string): AppError =>
  new AppError('INVALID', text, { fields: { [field]: text } });

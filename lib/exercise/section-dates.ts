import { AppError, changedMeanwhile, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { retryOnConflict } from '@/lib/data/retry';
import { datesForSection } from '@/shared/exercise/rounds';
import { sectionDatesInput } from '@/shared/schemas/exercise';
import { lateRuleOf } from '@/lib/rows/exercise';
import { inWords, meant, wrong } from './rounds';

/**
 * Gives one section of the course its own opening and due date in a round; an empty field inherits the round's.
 * Refused once the round was released to someone in the section. Result: what had to be decided where the clocks
 * change.
 */
export const setSectionDates = operation({
  name: 'set-section-dates',
  allow: 'exercise:plan',
  input: sectionDatesInput,
  run: async ({ data, now }, { roundId, sectionId, version, opensLocal, dueLocal }) => {
    const round = await data.rounds.find(roundId);
    if (!round) throw notFound();
    const { course } = round.exercise;
    const section = (await data.rounds.sectionsOf(roundId)).find(({ id }) => id === sectionId);
    if (!section) throw notFound();
    if (section.released > 0)
      throw new AppError(
        'CONFLICT',
        `Round ${round.number} has been released to ${section.name}, so its dates are fixed. Add another round for more work.`,
      );
    const opens = meant(opensLocal, course.timeZone, 'opensLocal', 'opens');
    const due = meant(dueLocal, course.timeZone, 'dueLocal', 'due');
    const own = { sectionId, opensAt: opens?.at ?? null, dueAt: due?.at ?? null, markingStartedAt: null };
    const dates = datesForSection({ ...round, lateRule: lateRuleOf(round), sections: [own] }, sectionId);
    if (dates.opensAt && dates.dueAt && dates.dueAt <= dates.opensAt)
      throw wrong(
        due ? 'dueLocal' : 'opensLocal',
        `The round would be due for ${section.name} (${due ? inWords(due) : (round.dueLocal?.replace('T', ' ') ?? 'by the round’s date')}) before it opens. Give a later due date.`,
      );
    const columns = {
      opensLocal: opens?.local ?? null,
      opensAt: own.opensAt,
      dueLocal: due?.local ?? null,
      dueAt: own.dueAt,
    };
    const there = version < 0 ? null : version;
    if (!(await retryOnConflict(() => data.rounds.setSection(roundId, sectionId, there, columns))))
      throw changedMeanwhile(`the dates of ${section.name}`);
    await data.audit.record(
      {
        courseId: course.id,
        verb: 'section dates set',
        subject: `round:${roundId}`,
        details: { round: round.number, section: section.name, opens: opensLocal, due: dueLocal },
      },
      now,
    );
    return { exerciseId: round.exerciseId, roundId, remarks: [opens, due].flatMap((time) => time?.remark ?? []) };
  },
});

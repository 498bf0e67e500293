import { operation } from '@/lib/access/operation';
import { roundInHand } from '@/lib/review/context';
import { queueOrder } from '@/lib/review/order';
import { showClassInput } from '@/shared/schemas/class';
import { pageOf } from '@/shared/schemas/page';
import { classSummary } from './class-summary';
import { roundAskedFor } from './round-asked-for';
import { studentsPage } from './students-page';

/** Students on one page of the list. */
export const studentsPerPage = 20;

/** The class in one round: who has sent what, and per specimen and pair how far it is from the nearest reference. */
export const showClass = operation({
  name: 'show-class',
  allow: 'class:see',
  input: showClassInput,
  run: async ({ data, now }, { exerciseId, round: asked, page: askedPage }) => {
    const { rounds, number } = await roundAskedFor(data, exerciseId, asked);
    const hand = await roundInHand(data, exerciseId, number);
    const { round, exercise, course, settings, me } = hand;
    const { summary, students } = await classSummary(data, round, course.id, now);
    const { page, pages, from } = pageOf(askedPage, students, studentsPerPage);
    const list = await studentsPage(data, hand, { skip: from, take: studentsPerPage });
    const same = summary.lines.flatMap(({ identical }) => identical.flat());
    return {
      course: { id: course.id, title: course.title, timeZone: course.timeZone },
      exercise: { id: exercise.id, title: exercise.title },
      rounds,
      round: { number: round.number, title: round.title, begun: round.markingStartedAt !== null, state: round.state },
      namesHidden: settings.namesHidden,
      mayExport: me.role === 'instructor',
      criteria: list.criteria.map(({ versionId, title, levels }) => ({
        versionId,
        title,
        levels: levels.map((level) => level.title),
      })),
      students: list.rows.map((row) => ({
        ...row,
        counts: row.counts && { ...row.counts, receivedAt: row.counts.receivedAt.toISOString() },
      })),
      page,
      pages,
      studentCount: students,
      summary: { ...summary, lines: summary.lines.map((line) => ({ ...line, identical: [] as string[][] })) },
      identical: await namedGroups(),
    };

    /** Groups of equal settings, each named as the course names them now. */
    async function namedGroups() {
      if (same.length === 0) return [];
      const [people, aliases, released] = await Promise.all([
        data.markTasks.peopleOf(same),
        aliasesOf(),
        data.releases.numbersOf(round.id, same),
      ]);
      const nameOf = (memberId: string) => {
        if (!settings.namesHidden || released.has(memberId)) return people.get(memberId)?.name ?? 'an erased person';
        return aliases.get(memberId) ?? 'a student without a name yet';
      };
      return summary.lines.flatMap(({ text, identical }) =>
        identical.map((group) => ({ text, members: group.map(nameOf).sort() })),
      );
    }

    async function aliasesOf(): Promise<ReadonlyMap<string, string>> {
      if (!settings.namesHidden) return new Map();
      const { order } = await queueOrder(data, hand, now);
      return new Map(order.counted.map(({ memberId, alias }) => [memberId, alias]));
    }
  },
});

export type ShownClass = Awaited<ReturnType<typeof showClass>>;

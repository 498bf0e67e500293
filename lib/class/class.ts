import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { roundContext, type RoundContext } from '@/lib/review/context';
import { marksOfProofs, totalWithLate } from '@/lib/review/marks';
import { criterionView } from '@/lib/rows/exercise';
import { spacingOf } from '@/lib/rows/spacing';
import { lateOf } from '@/lib/work/rounds';
import { pairTotals } from '@/shared/class/pair-totals';
import { countedProof, type EffectiveMark, type Late } from '@/shared/marking/marks';
import { markingStartedFor, someBegun } from '@/shared/exercise/rounds';
import { prepareLine } from '@/shared/measure';
import { pairTotalsInput, getClassInput } from '@/shared/schemas/class';
import { leadsCourse } from '@/shared/schemas/course';
import { idSchema } from '@/shared/schemas/id';
import { packSchema, parsePack } from '@/shared/schemas/pack';
import { pageOf } from '@/shared/schemas/page';
import { groundSchema, sizeSchema } from '@/shared/schemas/spacing';
import { classSummary } from './class-summary';
import { mapLines } from './map-line';

/** Students on one page of the list. */
const studentsPerPage = 20;

/**
 * The class in one round: who has sent what, and per specimen and pair how far it is from the nearest reference.
 * `round` is null while the exercise has none.
 */
export const getClass = operation({
  name: 'get-class',
  allow: 'class:see',
  input: getClassInput,
  run: async ({ data, now }, { exerciseId, round: asked, page: askedPage }) => {
    const { rounds, number } = await roundAskedFor(data, exerciseId, asked);
    if (number === null) {
      const exercise = await data.exercises.find(exerciseId);
      if (!exercise) throw notFound();
      const { id, title, course } = exercise;
      return { course, exercise: { id, title }, round: null };
    }
    const context = await roundContext(data, exerciseId, number);
    const { round, exercise, course, hidden, me } = context;
    const { summary, students } = await classSummary(data, round, course.id, now);
    const { page, pages, from } = pageOf(askedPage, students, studentsPerPage);
    const list = await studentsPage(data, context, { skip: from, take: studentsPerPage });
    const versions = await data.classMap.versions(summary.lines.map(({ specimenVersionId }) => specimenVersionId));
    const same = summary.lines.flatMap(({ identical }) => identical.flat());
    return {
      course: { id: course.id, title: course.title, timeZone: course.timeZone },
      exercise: { id: exercise.id, title: exercise.title },
      rounds,
      round: { number: round.number, title: round.title, begun: someBegun(round), state: round.state },
      namesHidden: hidden,
      mayExport: leadsCourse(me.role),
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
      /** What the lines are drawn from, as far as they were sent. */
      sheets: versions.map((version) => ({
        specimenVersionId: version.id,
        pack: parsePack(JSON.parse(version.pack.payload)),
        ground: groundSchema.parse(version.ground),
        size: sizeSchema.parse({ value: version.size, unit: version.unit }),
      })),
      summary: { ...summary, lines: summary.lines.map((line) => ({ ...line, identical: [] as string[][] })) },
      identical: await namedGroups(),
    };

    /** Groups of equal settings, each named as the course names them now. */
    async function namedGroups() {
      if (same.length === 0) return [];
      const [people, aliases] = await Promise.all([
        data.markTasks.peopleOf(same),
        hidden ? data.markTasks.aliasesOf(exercise.id, same) : new Map<string, string>(),
      ]);
      const nameOf = (memberId: string) => {
        if (!hidden) return people.get(memberId)?.name ?? 'an erased person';
        return aliases.get(memberId) ?? 'a student without a name yet';
      };
      return summary.lines.flatMap(({ text, identical }) =>
        identical.map((group) => ({ text, members: group.map(nameOf).sort() })),
      );
    }
  },
});

export type ShownClass = Extract<Awaited<ReturnType<typeof getClass>>, { round: object }>;

/**
 * One student in the list of who has sent what. While names are hidden, only whether they have sent: how many proofs,
 * when, how late and what was released would tie the name to the alias.
 */
export type StudentRow = {
  memberId: string;
  name: string;
  section: string | null;
  sent: number;
  counts: { number: number; receivedAt: Date; why: 'last' | 'chosen' } | null;
  late: Late | null;
  marked: boolean | null;
  percent: number | null;
  levels: ({ criterionVersionId: string } & EffectiveMark)[];
  released: number | null;
  hidden: boolean;
};

/**
 * A page of the class: who has sent what in the round, and how it was marked. `evenHidden` gives the marks of hidden
 * students, too: then their names must not go out beside them.
 */
export async function studentsPage(
  data: ScopedData,
  { round, course, exercise, hidden }: RoundContext,
  page: { skip: number; take: number },
  { evenHidden = false } = {},
): Promise<{ rows: StudentRow[]; criteria: ReturnType<typeof criterionView>[] }> {
  const [members, criteriaRows] = await Promise.all([
    data.classSummary.studentsWithProofs(course.id, round.id, page),
    data.criteria.ofExercise(exercise.id),
  ]);
  const criteria = criteriaRows.map(criterionView);
  const counted = members.map((member) => ({
    member,
    ...countedProof(member.proofs, markingStartedFor(round, member.sectionId), member.choices[0] ?? null),
  }));
  const [releases, marks] = await Promise.all([
    data.releases.numbersOf(
      round.id,
      members.map(({ id }) => id),
    ),
    marksOfProofs(
      data,
      round,
      counted.flatMap(({ proof }) => (proof ? [proof.id] : [])),
    ),
  ]);
  const rows = counted.map(({ member, proof, why }): StudentRow => {
    const released = releases.get(member.id)?.number ?? null;
    const late = proof ? lateOf(round, member, proof.receivedAt) : null;
    // While two people mark a proof, neither's marks may appear on a page that the other can open.
    const two = proof ? marks.stateOf(proof.id) : 'none';
    const begun = proof ? marks.firstDone(proof.id) : null;
    const withheld = (hidden || two === 'waits') && !evenHidden;
    const given = criteria.map((criterion) => ({
      ...criterion,
      mark: proof ? marks.effective(proof.id, criterion.versionId) : { level: null, from: 'first' as const },
    }));
    const row: StudentRow = {
      memberId: member.id,
      name: member.user?.name ?? `Erased person (${member.id.slice(-6)})`,
      section: member.section?.name ?? null,
      sent: member.proofs.length,
      counts: proof
        ? { number: proof.number, receivedAt: proof.receivedAt, why: why === 'chosen' ? 'chosen' : 'last' }
        : null,
      late,
      marked: (hidden && !evenHidden) || !proof || begun === null ? null : begun && two !== 'waits',
      percent: withheld || !proof ? null : totalWithLate(given, late).after,
      levels: withheld ? [] : given.map(({ versionId, mark }) => ({ criterionVersionId: versionId, ...mark })),
      released,
      hidden,
    };
    return hidden && !evenHidden
      ? { ...row, sent: Math.min(row.sent, 1), counts: null, late: null, released: null }
      : row;
  });
  return { rows, criteria };
}

/**
 * The rounds of an exercise, and the one to show: the one asked for, else the latest with proofs, else the first; null
 * where there is none.
 */
export async function roundAskedFor(data: ScopedData, exerciseId: string, asked: number | null) {
  const rounds = await data.classSummary.roundNumbers(exerciseId);
  const number = asked ?? rounds.findLast(({ proofs }) => proofs > 0)?.number ?? rounds[0]?.number ?? null;
  return { rounds, number };
}

/**
 * One line of a round: what the class set at each pair, as totals, beside the references and their tolerances. Names
 * only the authors of references.
 */
export const getPairTotals = operation({
  name: 'get-pair-totals',
  allow: 'class:see',
  input: pairTotalsInput,
  run: async ({ data, now }, { exerciseId, roundNumber, line }) => {
    const { round, course, settings } = await roundContext(data, exerciseId, roundNumber);
    const { summary } = await classSummary(data, round, course.id, now);
    const wanted = summary.lines.find(({ specimenVersionId }) => specimenVersionId === line);
    const [version] = wanted ? await data.classMap.versions([line]) : [];
    if (!wanted || !version) throw notFound();
    const [map] = await mapLines(data, round, course.id, [wanted], now);
    const references = await data.classMap.references(map!.setId ? [map!.setId] : [], [line]);
    const builtIn = prepareLine(z.parse(packSchema, JSON.parse(version.pack.payload))).pairs.map(
      (pair) => pair.builtIn,
    );
    return pairTotals(
      map!,
      builtIn,
      references.map(({ authorId, author, ...reference }) => ({
        name: author.user?.name ?? 'a former instructor',
        spacing: spacingOf(reference),
        tolerances: map!.tolerances[map!.rows.find((row) => row.author === authorId)?.against ?? 0] ?? [],
      })),
      settings.tolerance,
    );
  },
});

/** All rounds of a course at a glance: how many of the class have sent, and how many have had a release. */
export const getCourseClass = operation({
  name: 'get-course-class',
  allow: 'class:see',
  input: z.strictObject({ courseId: idSchema }),
  run: async ({ data }, { courseId }) => {
    const course = await data.classSummary.course(courseId);
    if (!course) throw notFound();
    const [rounds, students] = await Promise.all([
      data.classSummary.roundsOfCourse(courseId),
      data.members.countStudents(courseId, '').then(({ all }) => all),
    ]);
    const tallies = await data.roundState.tallies(rounds.map(({ id }) => id));
    return {
      course,
      students,
      rounds: rounds.map(({ id, number, title, state, dueAt, sections, exercise }) => ({
        number,
        title,
        state,
        dueAt: dueAt?.toISOString() ?? null,
        sections: sections.flatMap((own) =>
          own.dueAt ? [{ name: own.section.name, dueAt: own.dueAt.toISOString() }] : [],
        ),
        exercise,
        ...(tallies.get(id) ?? { sent: 0, released: 0 }),
      })),
    };
  },
});

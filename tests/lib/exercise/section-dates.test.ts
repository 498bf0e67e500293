import { beforeEach, expect, it } from 'vitest';
import { getClass, getCourseClass } from '@/lib/class/class';
import { changeSection } from '@/lib/course/members';
import { listExercises } from '@/lib/exercise/exercises';
import { changeRound, extendRound, getRound } from '@/lib/exercise/rounds';
import { setSectionDates } from '@/lib/exercise/section-dates';
import { releaseRound } from '@/lib/release/release';
import { getReleasePlan } from '@/lib/release/plan';
import { beginMarking } from '@/lib/review/counted';
import { getProofLine } from '@/lib/review/desk';
import { giveMark } from '@/lib/review/marks';
import { getQueue } from '@/lib/review/queue';
import { openBench } from '@/lib/work/bench';
import { listNextSteps } from '@/lib/work/next-steps';
import { getWork } from '@/lib/work/overview';
import { getProof, sendProof } from '@/lib/work/proofs';
import { fillWorld, type Ids } from '@/tests/access/fill-world';
import { describeOnBothDatabases } from '@/tests/fixtures/databases';
import { emptyAll } from '@/tests/fixtures/empty-all';
import { allAtOnce, callerIn } from '@/tests/fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');
const days = (count: number) => new Date(now.getTime() + count * 86_400_000);

/**
 * Round 2 opened five days ago and is due in five days. `student` is in the section Monday, `otherStudent` in Thursday.
 * The course is in Lisbon: one hour from UTC in summer, none in March.
 */
describeOnBothDatabases('dates of a section', (suite) => {
  let ids: Ids;
  let thursday: string;
  beforeEach(async () => {
    await emptyAll(suite);
    ids = await fillWorld(suite.db, now);
    thursday = `${ids.section.slice(0, -2)}th`;
    await suite.db.section.create({ data: { id: thursday, courseId: ids.course, name: 'Thursday', createdAt: now } });
    await suite.db.member.update({ where: { id: ids.members.otherStudent }, data: { sectionId: thursday } });
    await suite.db.roundExtension.deleteMany();
    await suite.db.course.update({ where: { id: ids.course }, data: { timeZone: 'Europe/Lisbon' } });
  });
  const as = (who: Parameters<ReturnType<typeof callerIn>>[0]) => callerIn(ids)(who);
  const local = (at: Date) => at.toISOString().slice(0, 16);
  const set = (sectionId: string, dates: { opens?: Date; due?: Date }, version = -1) =>
    setSectionDates(
      as('instructor'),
      {
        roundId: ids.nextRound,
        sectionId,
        version,
        opensLocal: dates.opens ? local(dates.opens) : '',
        dueLocal: dates.due ? local(dates.due) : '',
      },
      { now },
    );
  const rule = (lateRule: object) =>
    suite.db.round.update({ where: { id: ids.nextRound }, data: { lateRule: JSON.stringify(lateRule) } });
  const send = (who: 'student' | 'otherStudent', at = now) =>
    sendProof(
      as(who),
      { exerciseId: ids.exercise, requestKey: `by-${who}-${at.getTime()}`, reasoning: 'Even now.' },
      { now: at },
    );
  const round = () => ({ exerciseId: ids.exercise, roundNumber: 2 });
  const dueOn = async (who: 'student' | 'otherStudent') => {
    const [work, bench, list, steps] = await Promise.all([
      getWork(as(who), { exerciseId: ids.exercise }, { now }),
      openBench(as(who), { exerciseId: ids.exercise, specimenId: ids.specimen }, { now }),
      listExercises(as(who), { courseId: ids.course }, { now }),
      listNextSteps(as(who), {}, { now }),
    ]);
    return [
      work.current?.dueAt,
      new Date(bench.round!.dueAt!).toISOString(),
      list[0]!.rounds[1]!.dueAt?.toISOString(),
      new Date(steps.student[0]!.dueAt!).toISOString(),
    ];
  };

  it('are what its members read everywhere, and nobody else; cleared, the round’s hold again', async () => {
    await set(ids.section, { due: days(2) });
    await set(thursday, { due: days(7) });
    expect(await dueOn('student')).toEqual(Array(4).fill(days(2).toISOString()));
    expect(await dueOn('otherStudent')).toEqual(Array(4).fill(days(7).toISOString()));
    await set(ids.section, {}, 0);
    expect(await dueOn('student')).toEqual(Array(4).fill(days(5).toISOString()));
    const seen = JSON.stringify(await listExercises(as('otherStudent'), { courseId: ids.course }, { now }));
    expect(seen).not.toContain('Monday');
    expect(seen).not.toContain(ids.section);
  });

  it('decide whether a proof is taken, how late it is, and until when late ones are', async () => {
    await rule({ accept: 'until', untilAt: days(6).toISOString(), deductPerDay: 10 });
    await set(ids.section, { due: days(-2.5) });
    // The last date moves with the due date: from one day after it to one day after it.
    await expect(send('student')).rejects.toMatchObject({ code: 'CONFLICT' });
    expect((await getWork(as('student'), { exerciseId: ids.exercise }, { now })).current?.takesProofs).toBe(false);
    expect((await send('otherStudent')).late).toBeNull();
    await set(ids.section, { due: days(-0.5) }, 0);
    const { late, proofId } = await send('student');
    expect(late).toEqual({ days: 1, deductPercent: 10 });
    expect((await getProof(as('student'), { proofId }, { now })).late).toEqual(late);
    const desk = await getProofLine(as('assistant'), { proof: proofId, specimenId: ids.specimen }, { now });
    expect(desk.marks.total.rule).toMatchObject({ startedDays: 1, deduct: 10 });
    const { students } = (await getClass(
      as('assistant'),
      { exerciseId: ids.exercise, round: 2, page: 1 },
      { now },
    )) as {
      students: { memberId: string; late: object | null }[];
    };
    expect(students.find(({ memberId }) => memberId === ids.members.student)!.late).toMatchObject({ startedDays: 1 });
    expect(students.find(({ memberId }) => memberId === ids.members.otherStudent)!.late).toBeNull();
    const plan = await getReleasePlan(as('instructor'), { ...round(), page: 1 }, { now });
    expect(plan.rows.map((row) => row.late !== null).toSorted()).toEqual([false, true]);
  });

  it('decide when a round opens', async () => {
    await suite.db.round.update({ where: { id: ids.round }, data: { number: 3 } });
    await suite.db.round.update({ where: { id: ids.nextRound }, data: { number: 1 } });
    await suite.db.release.deleteMany();
    await suite.db.round.update({ where: { id: ids.round }, data: { opensAt: days(90), dueAt: null } });
    await set(ids.section, { opens: days(1) });
    await expect(send('student')).rejects.toMatchObject({ code: 'CONFLICT' });
    const work = await getWork(as('student'), { exerciseId: ids.exercise }, { now });
    expect([work.current, work.next?.opensAt, work.lines.length]).toEqual([null, days(1).toISOString(), 0]);
    expect((await send('otherStudent')).round).toBe(1);
  });

  it('after a section’s due date the first mark fixes its proofs, and only its', async () => {
    await set(ids.section, { due: days(-1) });
    const other = await send('otherStudent');
    const mark = (proofId: string) =>
      giveMark(
        as('assistant'),
        { proofId, criterionVersionId: ids.criterionVersion, level: 2, version: -1, why: '' },
        { now },
      );
    await mark(ids.nextProof);
    await mark(other.proofId);
    expect((await send('student', days(0.1))).counts).toBe(false);
    expect((await send('otherStudent', days(0.1))).counts).toBe(true);
  });

  it('marking begins for a section by itself, and for everyone else by itself', async () => {
    await set(ids.section, { due: days(-1) });
    await send('otherStudent');
    await beginMarking(as('assistant'), { ...round(), version: 0, section: ids.section }, { now });
    expect((await send('student', days(0.1))).counts).toBe(false);
    expect((await send('otherStudent', days(0.1))).counts).toBe(true);
    const queue = () => getQueue(as('assistant'), { ...round(), page: 1 }, { now: days(0.2) });
    const later = async () => (await queue()).queue.map((entry) => entry.later.length).toSorted();
    expect(await later()).toEqual([0, 1]);
    // Moving to the other section, the student's latest counts again; the queue is worked out anew.
    await changeSection(
      as('instructor'),
      { courseId: ids.course, memberId: ids.members.student, sectionId: thursday },
      { now },
    );
    expect(await later()).toEqual([0, 0]);
    const { version } = (await queue()).round;
    await beginMarking(as('assistant'), { ...round(), version }, { now: days(0.3) });
    expect((await send('otherStudent', days(0.4))).counts).toBe(false);
    // A section that got dates after marking began stays begun.
    await set(thursday, { due: days(3) });
    expect((await send('otherStudent', days(0.5))).counts).toBe(false);
  });

  it('a section’s dates are fixed by its release, and another’s are not', async () => {
    const to = (await getReleasePlan(as('instructor'), { ...round(), page: 1 }, { now })).rows.map(
      ({ token, seen }) => ({
        proofId: token,
        seen,
      }),
    );
    await releaseRound(as('instructor'), { ...round(), to }, { now });
    await expect(set(ids.section, { due: days(9) })).rejects.toMatchObject({ code: 'CONFLICT' });
    await set(thursday, { due: days(9) });
    expect((await send('otherStudent', days(8))).late).toBeNull();
  });

  it('an extension begins where the section’s own date ends', async () => {
    await set(ids.section, { due: days(8) });
    const extend = (due: Date) =>
      extendRound(
        as('instructor'),
        { roundId: ids.nextRound, memberId: ids.members.student, dueLocal: local(due) },
        { now },
      );
    await expect(extend(days(7))).rejects.toMatchObject({ userMessage: expect.stringContaining('Monday') });
    await extend(days(9));
    expect(await dueOn('student')).toEqual(Array(4).fill(days(9).toISOString()));
    expect(await dueOn('otherStudent')).toEqual(Array(4).fill(days(5).toISOString()));
  });

  it('a section is never due before it opens, by whichever date is changed', async () => {
    await expect(set(ids.section, { due: days(-6) })).rejects.toMatchObject({ code: 'INVALID' });
    await expect(set(ids.section, { opens: days(6) })).rejects.toMatchObject({ code: 'INVALID' });
    await set(ids.section, { due: days(1) });
    const { round: row } = await getRound(as('instructor'), { roundId: ids.nextRound }, { now });
    const change = (opens: Date) =>
      changeRound(
        as('instructor'),
        {
          roundId: ids.nextRound,
          version: row.version,
          title: '',
          opensLocal: local(opens),
          dueLocal: local(days(5)),
          accept: 'always',
          untilLocal: '',
          deductPerDay: 0,
        },
        { now },
      );
    await expect(change(days(2))).rejects.toMatchObject({ code: 'INVALID' });
    await change(days(0.5));
  });

  it('of several who set them at once one does, and the others are told', async () => {
    const first = await allAtOnce([1, 2, 3].map((day) => () => set(ids.section, { due: days(day) })));
    expect(first).toEqual({ done: 1, refused: ['CONFLICT', 'CONFLICT'] });
    const again = await allAtOnce([1, 2, 3].map((day) => () => set(ids.section, { due: days(day) }, 0)));
    expect(again).toEqual({ done: 1, refused: ['CONFLICT', 'CONFLICT'] });
    expect(await suite.db.roundSection.count()).toBe(1);
  });

  it('are shown to staff by name, and go with the section', async () => {
    await set(ids.section, { due: days(2) });
    const { round: shown, sections } = await getRound(as('instructor'), { roundId: ids.nextRound }, { now });
    expect(shown.sections).toMatchObject([{ name: 'Monday', dueAt: days(2), dueLocal: local(days(2)), version: 0 }]);
    expect(sections.map(({ name, students }) => [name, students])).toEqual([
      ['Monday', 1],
      ['Thursday', 1],
    ]);
    const { rounds } = await getCourseClass(as('assistant'), { courseId: ids.course }, { now });
    expect(rounds[1]!.sections).toEqual([{ name: 'Monday', dueAt: days(2).toISOString() }]);
    const steps = await listNextSteps(as('assistant'), {}, { now });
    expect(steps.staff.find(({ round: { number } }) => number === 2)!.dueAt).toBe(days(2).getTime());
    await suite.db.section.delete({ where: { id: ids.section } });
    expect(await suite.db.roundSection.count()).toBe(0);
    expect(await dueOn('student')).toEqual(Array(4).fill(days(5).toISOString()));
  });

  it('of another course’s section cannot be set', async () => {
    const foreign = `${ids.section.slice(0, -2)}fo`;
    await suite.db.section.create({
      data: { id: foreign, courseId: ids.otherCourse, name: 'Elsewhere', createdAt: now },
    });
    await expect(set(foreign, { due: days(2) })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    expect(await suite.db.roundSection.count()).toBe(0);
  });
});

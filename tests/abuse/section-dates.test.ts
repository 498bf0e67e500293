import { beforeEach, expect, it } from 'vitest';
import { createJoinLink, joinCourse } from '@/lib/course/join';
import { changeSection } from '@/lib/course/members';
import { setSectionDates } from '@/lib/exercise/section-dates';
import { beginMarking } from '@/lib/review/counted';
import { openBench } from '@/lib/work/bench';
import { listNextSteps } from '@/lib/work/next-steps';
import { getWork } from '@/lib/work/overview';
import { getProof, sendProof } from '@/lib/work/proofs';
import { fillWorld, type Ids } from '@/tests/access/fill-world';
import { describeOnSqlite } from '@/tests/fixtures/databases';
import { emptyAll } from '@/tests/fixtures/empty-all';
import { callerIn } from '@/tests/fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');
const days = (count: number) => new Date(now.getTime() + count * 86_400_000);

/** `student` is in Monday, whose dates are over or still to come; `otherStudent` is in Thursday, which has time. */
describeOnSqlite('somebody of one section after the dates of another', (suite) => {
  let ids: Ids;
  let thursday: string;
  beforeEach(async () => {
    await emptyAll(suite);
    ids = await fillWorld(suite.db, now);
    thursday = `${ids.section.slice(0, -2)}th`;
    await suite.db.section.create({ data: { id: thursday, courseId: ids.course, name: 'Thursday', createdAt: now } });
    await suite.db.member.update({ where: { id: ids.members.otherStudent }, data: { sectionId: thursday } });
    await suite.db.roundExtension.deleteMany();
    await suite.db.round.update({
      where: { id: ids.nextRound },
      data: { lateRule: JSON.stringify({ accept: 'none' }) },
    });
  });
  const as = (who: Parameters<ReturnType<typeof callerIn>>[0]) => callerIn(ids)(who);
  const own = (sectionId: string, dates: { opensAt?: Date; dueAt?: Date; markingStartedAt?: Date }) =>
    suite.db.roundSection.create({ data: { id: `own-${sectionId}`, roundId: ids.nextRound, sectionId, ...dates } });
  const send = (key = 'after-the-due-date') =>
    sendProof(as('student'), { exerciseId: ids.exercise, requestKey: key, reasoning: 'Late.' }, { now });

  it('sends nothing after their own due date, however long the other section has', async () => {
    await own(ids.section, { dueAt: days(-1) });
    await own(thursday, { dueAt: days(9) });
    await expect(send()).rejects.toMatchObject({ code: 'CONFLICT' });
    const { current } = await getWork(as('student'), { exerciseId: ids.exercise }, { now });
    expect(current).toMatchObject({ takesProofs: false, dueAt: days(-1).toISOString() });
    const { student } = await listNextSteps(as('student'), {}, { now });
    expect(student[0]).toMatchObject({ takesProofs: false, dueAt: days(-1).getTime() });
  });

  it('does not move to the other section: not by its join link, nor by asking for it', async () => {
    await own(ids.section, { dueAt: days(-1) });
    await own(thursday, { dueAt: days(9) });
    const { path } = await createJoinLink(
      as('instructor'),
      { courseId: ids.course, role: 'student', sectionId: thursday, days: 7 },
      { now },
    );
    await joinCourse(as('student'), { token: path.split('/').at(-1)! }, { now });
    await expect(
      changeSection(
        as('student'),
        { courseId: ids.course, memberId: ids.members.student, sectionId: thursday },
        { now },
      ),
    ).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await expect(
      setSectionDates(
        as('student'),
        { roundId: ids.nextRound, sectionId: ids.section, version: 0, opensLocal: '', dueLocal: '' },
        { now },
      ),
    ).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await expect(send()).rejects.toMatchObject({ code: 'CONFLICT' });
  });

  it('sees no line, draft or practice of a round that is open to the other section only', async () => {
    await suite.db.release.deleteMany();
    await suite.db.round.update({ where: { id: ids.round }, data: { number: 3, opensAt: days(90), dueAt: null } });
    await suite.db.round.update({ where: { id: ids.nextRound }, data: { number: 1, opensAt: days(3) } });
    await own(thursday, { opensAt: days(-3) });
    const work = (who: 'student' | 'otherStudent') => getWork(as(who), { exerciseId: ids.exercise }, { now });
    expect((await work('otherStudent')).lines).toHaveLength(1);
    const mine = await work('student');
    expect([mine.current, mine.lines, mine.demonstrations]).toEqual([null, [], []]);
    expect(JSON.stringify(mine)).not.toContain(days(-3).toISOString());
    const bench = (who: 'student' | 'otherStudent') =>
      openBench(as(who), { exerciseId: ids.exercise, specimenId: ids.specimen }, { now });
    await bench('otherStudent');
    await expect(bench('student')).rejects.toMatchObject({ code: 'NOT_FOUND' });
    const { student } = await listNextSteps(as('student'), {}, { now });
    expect(student[0]).toMatchObject({ round: null, line: undefined });
  });

  it('reads no start of marking but their own section’s', async () => {
    await own(thursday, { dueAt: days(-2), markingStartedAt: days(-1) });
    const { afterMarkingStarted, counts } = await send();
    expect([afterMarkingStarted, counts]).toEqual([false, true]);
    await own(ids.section, { dueAt: days(4) });
    await beginMarking(
      as('assistant'),
      { exerciseId: ids.exercise, roundNumber: 2, version: 0, section: ids.section },
      { now: days(0.1) },
    );
    const again = await sendProof(
      as('student'),
      { exerciseId: ids.exercise, requestKey: 'after-marking-began', reasoning: 'Again.' },
      { now: days(0.2) },
    );
    expect([again.afterMarkingStarted, again.counts]).toEqual([true, false]);
    expect((await getProof(as('student'), { proofId: again.proofId }, { now })).counts).toBe('kept');
  });
});

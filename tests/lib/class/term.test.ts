import { beforeAll, expect, it } from 'vitest';
import { getOwnTerm, getTerm } from '@/lib/class/term';
import { fillWorld, type Ids } from '../../access/fill-world';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { callerIn } from '../../fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');

describeOnBothDatabases('a student’s term', (suite) => {
  let ids: Ids;
  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
  });
  const as = (who: Parameters<ReturnType<typeof callerIn>>[0]) => callerIn(ids)(who);
  const forStaff = () => getTerm(as('assistant'), { courseId: ids.course, memberId: ids.members.student }, { now });
  const own = (who: 'student' | 'otherStudent') => getOwnTerm(as(who), { courseId: ids.course }, { now });

  it('shows its student of a round what was released, and of another only that it came', async () => {
    const { rounds } = await own('student');
    expect(
      rounds.map(({ number, sent, silent, proofId, released, notes, lines }) => ({
        number,
        sent,
        silent,
        proofId,
        released,
        notes,
        lines: lines.length,
      })),
    ).toEqual([
      {
        number: 1,
        sent: 1,
        silent: null,
        proofId: ids.proof,
        released: { number: 1, percent: 50, marks: [{ title: 'Evenness', level: 'Mostly' }] },
        notes: { all: 1, settled: 0 },
        lines: 1,
      },
      { number: 2, sent: 1, silent: 'not released', proofId: null, released: null, notes: null, lines: 0 },
    ]);
    // The release of round 1 has no deviations: the exercise does not let references be seen.
    expect(rounds[0]!.lines[0]!.pairs).toBeNull();
  });

  it('tells the student nothing of notes, comparisons or picks that were not released', async () => {
    await suite.db.roundChoice.create({
      data: {
        id: 'pick',
        roundId: ids.nextRound,
        memberId: ids.members.student,
        proofId: ids.nextProof,
        chosenAt: now,
      },
    });
    const told = JSON.stringify(await own('student'));
    for (const secret of [ids.nextProof, ids.nextNote, 'Not released yet', 'tolerance'])
      expect(told).not.toContain(secret);
  });

  it('gives another student theirs, with nothing of the first in it', async () => {
    const term = await own('otherStudent');
    expect(term.student.name).toBe('The otherStudent');
    expect(term.rounds.map(({ silent }) => silent)).toEqual(['nothing sent', 'nothing sent']);
    expect(JSON.stringify(term)).not.toContain(ids.proof);
  });

  it('shows staff the work as it stands, marks as released, and notes by number', async () => {
    const { student, rounds } = await forStaff();
    expect(student).toMatchObject({ name: 'The student', section: 'Monday' });
    expect(
      rounds.map(({ silent, proofId, released, notes }) => [silent, proofId, released?.percent ?? null, notes]),
    ).toEqual([
      [null, ids.proof, 50, { all: 1, settled: 0 }],
      [null, ids.nextProof, null, { all: 1, settled: 0 }],
    ]);
    // One pair is too short a line to say how tight it is: −4 beside −10 leaves 6, within the least tolerance of 10.
    expect(rounds[1]!.lines[0]!.pairs).toMatchObject([{ rest: 6, within: true }]);
  });

  it('shows its student no measured figure where the course hides them, and staff all of them', async () => {
    const hide = (figuresHidden: boolean) =>
      suite.db.course.update({ where: { id: ids.course }, data: { settings: JSON.stringify({ figuresHidden }) } });
    await hide(true);
    const { rounds } = await own('student');
    expect(rounds[0]!.lines[0]).toMatchObject({ evenness: null, pairs: null, spacing: { offsets: [-4] } });
    expect(rounds[0]!.released).toMatchObject({ percent: 50 });
    expect((await forStaff()).rounds[1]!.lines[0]!.pairs).not.toBeNull();
    await hide(false);
  });

  it('keeps the work of an exercise from staff while its names are hidden', async () => {
    await suite.db.exercise.update({ where: { id: ids.exercise }, data: { settings: '{"namesHidden":true}' } });
    const { rounds } = await forStaff();
    // The first round was released; what it shows would tell whose the work of the second is.
    expect(rounds[0]).toMatchObject({ silent: 'hidden', receivedAt: null, proofId: null, released: null });
    expect(rounds[1]).toMatchObject({
      silent: 'hidden',
      sent: 1,
      receivedAt: null,
      proofId: null,
      lines: [],
      notes: null,
    });
    expect(JSON.stringify(rounds[1])).not.toContain(ids.nextProof);
  });
});

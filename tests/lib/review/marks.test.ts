import { beforeEach, expect, it } from 'vitest';
import { getProofLine } from '@/lib/review/desk';
import { getQueue } from '@/lib/review/queue';
import { beginMarking, chooseProof } from '@/lib/review/counted';
import { newId } from '@/lib/data/ids';
import { claimProof, finishProof, unclaimProof, leaseMinutes } from '@/lib/review/claim';
import { giveMark } from '@/lib/review/marks';
import { fillWorld, type Ids } from '@/tests/access/fill-world';
import { describeOnBothDatabases } from '@/tests/fixtures/databases';
import { emptyAll } from '@/tests/fixtures/empty-all';
import { allAtOnce, callerIn } from '@/tests/fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');
const later = (minutes: number) => new Date(now.getTime() + minutes * 60_000);

describeOnBothDatabases('marking', (suite) => {
  let ids: Ids;
  beforeEach(async () => {
    await emptyAll(suite);
    ids = await fillWorld(suite.db, now);
    await suite.db.markTask.deleteMany({ where: { proofId: ids.nextProof, notes: { none: {} } } });
  });
  const as = (who: Parameters<ReturnType<typeof callerIn>>[0]) => callerIn(ids)(who);
  const mark = (over = {}) => ({
    proofId: ids.nextProof,
    criterionVersionId: ids.criterionVersion,
    level: 1,
    version: -1,
    why: '',
    ...over,
  });

  it('gives every proof one task, however many markers open the queue at once', async () => {
    const proofId = newId();
    await suite.db.proof.create({
      data: {
        id: proofId,
        roundId: ids.nextRound,
        memberId: ids.members.otherStudent,
        number: 1,
        requestKey: 'request-other',
        reasoning: 'r',
        receivedAt: now,
      },
    });
    const { done } = await allAtOnce(
      Array.from(
        { length: 6 },
        () => () => getQueue(as('assistant'), { exerciseId: ids.exercise, roundNumber: 2 }, { now: later(1) }),
      ),
    );
    expect(done).toBe(6);
    expect(await suite.db.markTask.count({ where: { proofId } })).toBe(1);
  });

  it('keeps a proof for one marker at a time, until given back or left alone', async () => {
    await suite.db.markTask.updateMany({ where: { id: ids.nextTask }, data: { markerId: null } });
    const claims = await allAtOnce([
      () => claimProof(as('assistant'), { proof: ids.nextProof }, { now }),
      () => claimProof(as('instructor'), { proof: ids.nextProof }, { now }),
    ]);
    expect(claims).toEqual({ done: 1, refused: ['CONFLICT'] });
    const holder =
      (await suite.db.markTask.findUniqueOrThrow({ where: { id: ids.nextTask } })).markerId === ids.members.assistant
        ? 'assistant'
        : 'instructor';
    const other = holder === 'assistant' ? 'instructor' : 'assistant';
    await claimProof(as(holder), { proof: ids.nextProof }, { now: later(5) });
    await expect(
      claimProof(as(other), { proof: ids.nextProof }, { now: later(leaseMinutes + 4) }),
    ).rejects.toMatchObject({ code: 'CONFLICT', userMessage: expect.stringContaining(`The ${holder}`) });
    await claimProof(as(other), { proof: ids.nextProof }, { now: later(leaseMinutes + 6) });
    await unclaimProof(as(other), { proof: ids.nextProof }, { now: later(17) });
    await claimProof(as(holder), { proof: ids.nextProof }, { now: later(17) });
  });

  it('gives a mark once for one version, with its event and its line in the log', async () => {
    const { done, refused } = await allAtOnce(
      Array.from({ length: 5 }, (_, index) => () => giveMark(as('assistant'), mark({ level: index % 3 }), { now })),
    );
    expect([done, refused]).toEqual([1, ['CONFLICT', 'CONFLICT', 'CONFLICT', 'CONFLICT']]);
    const given = await suite.db.mark.findMany({ where: { taskId: ids.nextTask }, include: { events: true } });
    expect(given).toHaveLength(1);
    expect(given[0]!.events).toMatchObject([{ before: null, after: given[0]!.level, whoId: ids.members.assistant }]);
    expect(
      await suite.db.auditEvent.count({
        where: { verb: 'mark given', subject: `mark:${given[0]!.id}`, actorId: ids.users.assistant },
      }),
    ).toBe(1);
  });

  it('asks why a mark changes, and keeps the history', async () => {
    await giveMark(as('assistant'), mark(), { now });
    await expect(giveMark(as('assistant'), mark({ level: 2, version: 0 }), { now })).rejects.toMatchObject({
      code: 'INVALID',
      userMessage: expect.stringContaining('“Mostly”'),
    });
    await giveMark(as('assistant'), mark({ level: 2, version: 0, why: 'looked at it upside down' }), { now: later(1) });
    const { marks } = await getProofLine(
      as('instructor'),
      { proof: ids.nextProof, specimenId: ids.specimen },
      { now: later(2) },
    );
    expect(marks.history.map(({ before, after, why, who }) => [before, after, why, who])).toEqual([
      [null, 1, '', 'The assistant'],
      [1, 2, 'looked at it upside down', 'The assistant'],
    ]);
    expect(marks.total).toMatchObject({ percent: 100, after: 100, late: null });
  });

  it('refuses a level that the criterion does not have, and marks of somebody else’s proof in hand', async () => {
    await expect(giveMark(as('assistant'), mark({ level: 3 }), { now })).rejects.toMatchObject({
      code: 'INVALID',
      userMessage: expect.stringContaining('3 levels; level 4'),
    });
    await claimProof(as('assistant'), { proof: ids.nextProof }, { now });
    await expect(giveMark(as('instructor'), mark(), { now })).rejects.toMatchObject({ code: 'CONFLICT' });
  });

  it('is finished only when every criterion has its level', async () => {
    await expect(finishProof(as('assistant'), { proof: ids.nextProof, to: 'done' }, { now })).rejects.toMatchObject({
      code: 'INVALID',
      userMessage: expect.stringContaining('“Evenness”'),
    });
    await giveMark(as('assistant'), mark(), { now });
    await finishProof(as('assistant'), { proof: ids.nextProof, to: 'done' }, { now });
    await expect(claimProof(as('instructor'), { proof: ids.nextProof }, { now: later(60) })).rejects.toMatchObject({
      code: 'CONFLICT',
    });
  });

  it('applies the late rule in the open', async () => {
    await suite.db.roundExtension.deleteMany({});
    await suite.db.round.update({
      where: { id: ids.nextRound },
      data: { dueAt: new Date(now.getTime() - 2.5 * 86_400_000), lateRule: '{"accept":"always","deductPerDay":10}' },
    });
    await giveMark(as('assistant'), mark({ level: 2 }), { now });
    const { marks } = await getProofLine(as('assistant'), { proof: ids.nextProof, specimenId: ids.specimen }, { now });
    // Received two days before `now`: one begun day late, 10 % of 100.
    expect(marks.total).toMatchObject({ percent: 100, after: 90, rule: { startedDays: 1, deduct: 10 } });
  });

  it('counts the last proof sent before it began, or the one the instructor picked', async () => {
    const send = (number: number, at: Date) =>
      suite.db.proof.create({
        data: {
          id: newId(),
          roundId: ids.nextRound,
          memberId: ids.members.student,
          number,
          requestKey: `request-n${number}`,
          reasoning: 'r',
          receivedAt: at,
        },
      });
    await beginMarking(as('assistant'), { exerciseId: ids.exercise, roundNumber: 2, version: 0 }, { now });
    const afterwards = await send(2, later(1));
    const round = { exerciseId: ids.exercise, roundNumber: 2 };
    expect((await getQueue(as('instructor'), round, { now: later(2) })).queue).toMatchObject([
      { token: ids.nextProof, later: [{ token: afterwards.id, number: 2 }] },
    ]);
    await allAtOnce([
      () => chooseProof(as('instructor'), { proof: afterwards.id }, { now: later(3) }),
      () => chooseProof(as('instructor'), { proof: afterwards.id }, { now: later(3) }),
    ]);
    expect(await suite.db.roundChoice.count({ where: { roundId: ids.nextRound } })).toBe(1);
    expect((await getQueue(as('instructor'), round, { now: later(4) })).queue).toMatchObject([
      { token: afterwards.id },
    ]);
  });
});

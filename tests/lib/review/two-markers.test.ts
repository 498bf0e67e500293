import { beforeEach, expect, it } from 'vitest';
import type { Caller } from '@/lib/access/caller';
import { getProofLine } from '@/lib/review/desk';
import { getSpecimenAcross } from '@/lib/review/across';
import { writeNote } from '@/lib/review/notes';
import { getClass, type ShownClass } from '@/lib/class/class';
import { newId } from '@/lib/data/ids';
import { exportMarks } from '@/lib/export/marks';
import { exportRoundNotes } from '@/lib/export/notes';
import { claimProof, finishProof, unclaimProof } from '@/lib/review/claim';
import { giveMark } from '@/lib/review/marks';
import { setSecondMarking, getSecondQueue } from '@/lib/review/second-marker';
import { settleMark, getMarkDifference } from '@/lib/review/settle';
import { skipProof, claimNextProof } from '@/lib/review/next';
import { getAgreement } from '@/lib/review/agreement';
import { previewRelease, releaseRound } from '@/lib/release/release';
import { getRelease } from '@/lib/release/released';
import { getReleasePlan } from '@/lib/release/plan';
import { fillWorld, type Ids } from '@/tests/access/fill-world';
import { addCrowd } from '@/tests/fixtures/crowd';
import { describeOnBothDatabases } from '@/tests/fixtures/databases';
import { emptyAll } from '@/tests/fixtures/empty-all';
import { allAtOnce, callerIn } from '@/tests/fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');
const later = (minutes: number) => new Date(now.getTime() + minutes * 60_000);

describeOnBothDatabases('two markers', (suite) => {
  let ids: Ids;
  let others: Caller[];
  beforeEach(async () => {
    await emptyAll(suite);
    ids = await fillWorld(suite.db, now);
    others = await Promise.all(['Second', 'Third'].map(addAssistant));
    await suite.db.markTask.updateMany({ where: { id: ids.nextTask }, data: { markerId: null } });
    await setSecondMarking(
      as('instructor'),
      { roundId: ids.nextRound, version: 0, which: 'all', percent: 20 },
      { now },
    );
  });
  const as = (who: Parameters<ReturnType<typeof callerIn>>[0]) => callerIn(ids)(who);
  const round = () => ({ exerciseId: ids.exercise, roundNumber: 2 });
  const second = async (who: Caller) => (await getSecondQueue(who, round(), { now })).rows[0]!;
  const tokenOfSecond = async () => (await second(as('assistant'))).token;
  const mark = (proof: string, level: number, over = {}) => ({
    proofId: proof,
    criterionVersionId: ids.criterionVersion,
    level,
    version: -1,
    why: '',
    ...over,
  });
  const line = (who: Caller, proof: string) => getProofLine(who, { proof, specimenId: ids.specimen }, { now });

  async function addAssistant(name: string): Promise<Caller> {
    const [userId, sessionId] = [newId(), newId()];
    await suite.db.user.create({
      data: { id: userId, emailNorm: `${name.toLowerCase()}@school.example`, name, createdAt: now },
    });
    await suite.db.member.create({
      data: { id: newId(), courseId: ids.course, userId, role: 'assistant', joinedAt: now },
    });
    return { kind: 'person', userId, sessionId, address: '192.0.2.1' };
  }

  /** Both finish: the assistant gives one level, Second another. */
  async function bothFinish(first: number, other: number): Promise<string> {
    const token = await tokenOfSecond();
    await giveMark(as('assistant'), mark(ids.nextProof, first), { now });
    await finishProof(as('assistant'), { proof: ids.nextProof, to: 'done' }, { now });
    await giveMark(others[0]!, mark(token, other), { now });
    await finishProof(others[0]!, { proof: token, to: 'done' }, { now });
    return token;
  }

  it('are never one person, in either order, however they begin at the same moment', async () => {
    const token = await tokenOfSecond();
    for (let turn = 0; turn < 6; turn += 1) {
      await suite.db.markTask.updateMany({
        where: { proofId: ids.nextProof },
        data: { markerId: null, leaseUntil: null },
      });
      const { done, refused } = await allAtOnce([
        () => claimProof(as('assistant'), { proof: ids.nextProof }, { now }),
        () => claimProof(as('assistant'), { proof: token }, { now }),
      ]);
      expect([done, refused]).toEqual([1, ['CONFLICT']]);
      const tasks = await suite.db.markTask.findMany({
        where: { proofId: ids.nextProof, markerId: ids.members.assistant },
      });
      expect(tasks).toHaveLength(1);
    }
  });

  it('are two however many begin at once', async () => {
    const token = await tokenOfSecond();
    const callers = [as('assistant'), as('instructor'), ...others];
    const { done } = await allAtOnce(
      callers.flatMap((who) => [
        () => claimProof(who, { proof: ids.nextProof }, { now }),
        () => claimProof(who, { proof: token }, { now }),
      ]),
    );
    expect(done).toBe(2);
    const markers = (await suite.db.markTask.findMany({ where: { proofId: ids.nextProof } })).map(
      ({ markerId }) => markerId,
    );
    expect(new Set(markers).size).toBe(2);
    expect(markers).not.toContain(null);
  });

  it('stay two after a marker gave the proof back with marks in it', async () => {
    const token = await tokenOfSecond();
    await giveMark(as('assistant'), mark(ids.nextProof, 1), { now });
    await unclaimProof(as('assistant'), { proof: ids.nextProof }, { now });
    await claimProof(others[1]!, { proof: ids.nextProof }, { now: later(1) });
    await expect(claimProof(as('assistant'), { proof: token }, { now: later(2) })).rejects.toMatchObject({
      code: 'CONFLICT',
      userMessage: expect.stringContaining('first marking'),
    });
    expect((await second(as('assistant'))).status).toBe('own');
    await claimProof(others[0]!, { proof: token }, { now: later(2) });
    await unclaimProof(others[1]!, { proof: ids.nextProof }, { now: later(2) });
    await expect(claimProof(others[0]!, { proof: ids.nextProof }, { now: later(3) })).rejects.toMatchObject({
      code: 'CONFLICT',
      userMessage: expect.stringContaining('second marker'),
    });
  });

  it('go through a queue of the second marking, with what they skipped last and what they gave back free again', async () => {
    await addCrowd(
      suite.db,
      ids,
      Array.from({ length: 3 }, () => [0, 0, 0, 0, 0]),
      now,
    );
    const rows = async (who: Caller) => (await getSecondQueue(who, round(), { now })).rows;
    const take = async (who: Caller, after: string | null = null) =>
      (await claimNextProof(who, { ...round(), section: null, after, second: true }, { now })).proof;
    const order = (await rows(others[0]!)).map(({ token }) => token);
    expect(order).toHaveLength(4);
    expect(await take(others[0]!)).toBe(order[0]);
    await skipProof(others[0]!, { proof: order[0]!, to: 'skipped' }, { now });
    expect((await rows(others[0]!)).map(({ token, skipped, status }) => [token, skipped, status])).toEqual([
      ...order.slice(1).map((token) => [token, false, 'free']),
      [order[0], true, 'free'],
    ]);
    expect((await rows(others[1]!)).map(({ token }) => token)).toEqual(order);
    expect(await take(others[1]!)).toBe(order[0]);
    expect(await take(others[0]!)).toBe(order[1]);
    expect(await take(others[0]!, order[1])).toBe(order[2]);
    await unclaimProof(others[0]!, { proof: order[2]! }, { now });
    expect((await rows(others[1]!)).map(({ status }) => status)).toEqual(['mine', 'held', 'free', 'free']);
    expect(await take(others[1]!, order[0])).toBe(order[2]);
    // Two who ask at once never get one.
    const got: (string | null)[] = [];
    await allAtOnce(
      [others[0]!, others[1]!].map((who) => async () => {
        got.push(await take(who, order[2]));
      }),
    );
    expect(new Set(got).size).toBe(2);
  });

  it('see neither each other’s marks nor notes until both have finished, and nobody else does', async () => {
    const token = await tokenOfSecond();
    await giveMark(as('assistant'), mark(ids.nextProof, 1), { now });
    await writeNote(
      as('assistant'),
      {
        proofId: ids.nextProof,
        specimenVersionId: ids.specimenVersion,
        requestKey: 'the-first-note',
        fromPair: 0,
        toPair: 0,
        body: 'A first remark.',
        suggestion: null,
      },
      { now },
    );
    await claimProof(others[0]!, { proof: token }, { now });
    await writeNote(
      others[0]!,
      {
        proofId: token,
        specimenVersionId: ids.specimenVersion,
        requestKey: 'the-second-note',
        fromPair: 0,
        toPair: 0,
        body: 'A second remark.',
        suggestion: null,
      },
      { now },
    );
    const bodies = async (who: Caller, proof: string) => JSON.stringify((await line(who, proof)).notes);
    const blind = await line(others[0]!, token);
    expect(blind).toMatchObject({
      two: { state: 'waits', slot: 'second', sight: 'own' },
      marks: { criteria: [{ mark: { level: null } }], history: [] },
    });
    expect(JSON.stringify(blind)).not.toContain('A first remark.');
    expect(JSON.stringify(blind)).not.toContain('Not released yet.');
    expect(await bodies(as('assistant'), ids.nextProof)).not.toContain('A second remark.');
    for (const proof of [ids.nextProof, token]) {
      const stranger = await line(others[1]!, proof);
      expect(stranger).toMatchObject({
        two: { sight: 'none' },
        notes: [],
        marks: { criteria: [{ mark: { level: null } }], history: [] },
      });
    }
    for (const who of [others[0]!, others[1]!]) {
      const across = JSON.stringify(
        (await getSpecimenAcross(who, { ...round(), specimenId: ids.specimen, fault: null, page: 1 }, { now })).lines,
      );
      expect([across.includes('A first remark.'), across.includes('A second remark.')]).toEqual([
        false,
        who === others[0],
      ]);
      expect(JSON.stringify(await exportRoundNotes(who, round(), { now }))).not.toMatch(/A (first|second) remark/);
    }
    expect(
      ((await getClass(others[0]!, { exerciseId: ids.exercise, round: 2 }, { now })) as ShownClass).students.find(
        ({ memberId }) => memberId === ids.members.student,
      ),
    ).toMatchObject({ percent: null, levels: [], marked: false });
    await finishProof(as('assistant'), { proof: ids.nextProof, to: 'done' }, { now });
    await giveMark(others[0]!, mark(token, 2), { now });
    expect(await bodies(others[0]!, token)).not.toContain('A first remark.');
    await finishProof(others[0]!, { proof: token, to: 'done' }, { now });
    expect(await bodies(others[0]!, token)).toContain('A first remark.');
    expect(await bodies(as('assistant'), ids.nextProof)).toContain('A second remark.');
  });

  it('leave their marks as they were once both have finished', async () => {
    const token = await bothFinish(0, 2);
    await expect(
      giveMark(others[0]!, mark(token, 0, { version: 0, why: 'after a look at the other' }), { now }),
    ).rejects.toMatchObject({ code: 'CONFLICT', userMessage: expect.stringContaining('settle') });
    await expect(finishProof(as('assistant'), { proof: ids.nextProof, to: 'open' }, { now })).rejects.toMatchObject({
      code: 'CONFLICT',
    });
  });

  it('are held against each other, and what they differ by is settled once, by one who may, with a reason', async () => {
    await bothFinish(0, 2);
    const agreement = await getAgreement(as('assistant'), round(), { now });
    expect(agreement).toMatchObject({
      finished: 1,
      criteria: [{ n: 1, exact: 0, adjacent: 0 }],
      differences: [
        { token: ids.nextProof, apart: 100, criteriaApart: 1, open: 1, markers: ['The assistant', 'Second'] },
      ],
    });
    expect(agreement.criteria[0]!.reading).toContain('too few to say');
    const settle = (
      who: Caller,
      level: number | null,
      version: number,
      why = 'We looked at it together, upside down.',
    ) =>
      settleMark(who, { proof: ids.nextProof, criterionVersionId: ids.criterionVersion, level, version, why }, { now });
    await expect(settle(others[1]!, 1, -1)).rejects.toMatchObject({
      code: 'CONFLICT',
      userMessage: expect.stringContaining('one of the two'),
    });
    await expect(settle(as('instructor'), 1, -1, '  ')).rejects.toMatchObject({ code: 'INVALID' });
    const race = await allAtOnce([
      () => settle(as('instructor'), 1, -1),
      () => settle(others[0]!, 2, -1),
      () => settle(as('assistant'), 0, -1),
    ]);
    expect(race).toEqual({ done: 1, refused: ['CONFLICT', 'CONFLICT'] });
    await settle(as('instructor'), 1, 0, 'The last two gaps are even.');
    const { criteria, history } = await getMarkDifference(as('assistant'), { proof: ids.nextProof }, { now });
    expect(criteria[0]).toMatchObject({
      first: 0,
      second: 2,
      settled: 1,
      effective: { level: 1, from: 'settled' },
      version: 1,
    });
    expect(history.map(({ slot }) => slot)).toEqual(['first', 'second', 'settled', 'settled']);
    expect(history.at(-1)).toMatchObject({
      who: 'The instructor',
      why: 'The last two gaps are even.',
      after: 'Mostly',
    });
    expect((await getAgreement(as('instructor'), round(), { now })).differences[0]).toMatchObject({ open: 0 });
    expect(
      await suite.db.auditEvent.count({ where: { verb: { in: ['difference settled', 'settled level changed'] } } }),
    ).toBe(2);
  });

  it('are warned about before a release, which says what would count; settling after it makes a correction', async () => {
    await bothFinish(0, 2);
    const plan = async () => (await getReleasePlan(as('instructor'), round(), { now })).rows;
    const [row] = await plan();
    expect(row).toMatchObject({ differing: 1, secondWaits: false, percent: 0, unmarked: 0 });
    const preview = await previewRelease(as('instructor'), { ...round(), proof: ids.nextProof }, { now });
    expect(preview.unsure).toEqual([{ title: 'Evenness', level: 'Not yet', from: 'differs' }]);
    const release = async () =>
      releaseRound(
        as('instructor'),
        { ...round(), to: (await plan()).map(({ token, seen }) => ({ proofId: token, seen })) },
        { now },
      );
    await release();
    await settleMark(
      as('instructor'),
      { proof: ids.nextProof, criterionVersionId: ids.criterionVersion, level: 2, version: -1, why: 'Even after all.' },
      { now: later(1) },
    );
    const seen = async () => (await getRelease(as('student'), { proofId: ids.nextProof }, { now: later(2) })).release!;
    expect((await seen()).snapshot.total.after).toBe(0);
    expect(await release()).toEqual({ released: 1, corrected: 1 });
    expect(await seen()).toMatchObject({ number: 2, snapshot: { total: { after: 100 }, marks: [{ level: 2 }] } });
    const rows = await suite.db.release.findMany({ where: { roundId: ids.nextRound }, orderBy: { number: 'asc' } });
    expect(
      rows.map(({ number, snapshot }) => [number, (JSON.parse(snapshot) as { total: { after: number } }).total.after]),
    ).toEqual([
      [1, 0],
      [2, 100],
    ]);
    // Nothing of who marked or settled, nor of reasons, goes out.
    for (const { snapshot } of rows)
      for (const secret of ['Even after all', 'Second', 'settled by', 'differs'])
        expect(snapshot).not.toContain(secret);
    expect((await exportMarks(as('instructor'), round(), { now })).csv).toContain('100,settled,2');
  });

  it('count the first level while the second marker has not finished, and say so', async () => {
    await giveMark(as('assistant'), mark(ids.nextProof, 1), { now });
    await finishProof(as('assistant'), { proof: ids.nextProof, to: 'done' }, { now });
    const [row] = (await getReleasePlan(as('instructor'), round(), { now })).rows;
    expect(row).toMatchObject({ differing: 0, secondWaits: true, percent: 50 });
  });

  it('are asked for by one who plans, at the version that was on the screen, and what was begun stays', async () => {
    const token = await tokenOfSecond();
    await claimProof(others[0]!, { proof: token }, { now });
    await expect(
      setSecondMarking(as('instructor'), { roundId: ids.nextRound, version: 0, which: 'none', percent: 20 }, { now }),
    ).rejects.toMatchObject({ code: 'CONFLICT' });
    await setSecondMarking(
      as('instructor'),
      { roundId: ids.nextRound, version: 1, which: 'none', percent: 20 },
      { now },
    );
    expect((await getSecondQueue(as('instructor'), round(), { now })).rows).toMatchObject([
      { token, status: 'held', heldBy: 'Second' },
    ]);
    expect(
      await suite.db.auditEvent.count({ where: { verb: 'second marking set', actorId: ids.users.instructor } }),
    ).toBe(2);
  });

  it('never come from a proposal: what the measure proposes is shown and not given', async () => {
    await suite.db.criterionVersion.updateMany({ where: { id: ids.criterionVersion }, data: { basis: 'contact' } });
    const shown = await line(as('assistant'), ids.nextProof);
    expect(shown.marks.criteria[0]!.proposed).toMatchObject({
      arithmetic: expect.stringContaining('of 1 pairs touch'),
    });
    expect(shown.marks.criteria[0]!.mark).toMatchObject({ level: null, version: -1 });
    await claimProof(as('assistant'), { proof: ids.nextProof }, { now });
    await expect(finishProof(as('assistant'), { proof: ids.nextProof, to: 'done' }, { now })).rejects.toMatchObject({
      code: 'INVALID',
    });
    await getReleasePlan(as('instructor'), round(), { now });
    expect(await suite.db.mark.count({ where: { task: { proofId: ids.nextProof } } })).toBe(0);
    expect((await getReleasePlan(as('instructor'), round(), { now })).rows[0]).toMatchObject({
      unmarked: 1,
      percent: null,
    });
  });
});

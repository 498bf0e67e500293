import { beforeEach, expect, it } from 'vitest';
import { getProofLine } from '@/lib/review/desk';
import { getQueue } from '@/lib/review/queue';
import { claimProof, unclaimProof } from '@/lib/review/claim';
import { skipProof, claimNextProof } from '@/lib/review/next';
import { newId } from '@/lib/data/ids';
import { fillWorld, type Ids } from '@/tests/access/fill-world';
import { addCrowd } from '@/tests/fixtures/crowd';
import { describeOnBothDatabases } from '@/tests/fixtures/databases';
import { emptyAll } from '@/tests/fixtures/empty-all';
import { allAtOnce, callerIn } from '@/tests/fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');
const later = (minutes: number) => ({ now: new Date(now.getTime() + minutes * 60_000) });

describeOnBothDatabases('the queue of a marker', (suite) => {
  let ids: Ids;
  let crowd: Awaited<ReturnType<typeof addCrowd>>;
  const as = (who: 'assistant' | 'instructor') => callerIn(ids)(who);
  const round = () => ({ exerciseId: ids.exercise, roundNumber: 2 });
  const queue = async (who: 'assistant' | 'instructor', change: object = {}) =>
    (await getQueue(as(who), { ...round(), ...change }, { now })).queue.map(({ token }) => token);
  const take = async (who: 'assistant' | 'instructor', change: object = {}, at = { now }) =>
    (await claimNextProof(as(who), { ...round(), section: null, after: null, ...change }, at)).proof;

  beforeEach(async () => {
    await emptyAll(suite);
    ids = await fillWorld(suite.db, now);
    crowd = await addCrowd(
      suite.db,
      ids,
      Array.from({ length: 5 }, () => [0, 0, 0, 0, 0]),
      now,
    );
  });

  it('has what this marker skipped at its end, and nobody else’s order is touched', async () => {
    const before = await queue('assistant');
    expect(before).toHaveLength(6);
    await skipProof(as('assistant'), { proof: before[1]!, to: 'skipped' }, { now });
    await skipProof(as('assistant'), { proof: before[0]!, to: 'skipped' }, later(1));
    expect(await queue('assistant')).toEqual([...before.slice(2), before[1], before[0]]);
    expect(await queue('instructor')).toEqual(before);
    await skipProof(as('assistant'), { proof: before[1]!, to: 'taken-up' }, later(2));
    expect(await queue('assistant')).toEqual([...before.slice(1), before[0]]);
  });

  it('keeps one skip for one that is pressed twice at once, and lets the proof go', async () => {
    const [first] = await queue('assistant');
    await claimProof(as('assistant'), { proof: first! }, { now });
    const skip = () => skipProof(as('assistant'), { proof: first!, to: 'skipped' }, { now });
    expect((await allAtOnce([skip, skip, skip])).refused).toEqual([]);
    expect(await suite.db.markSkip.count()).toBe(1);
    await expect(claimProof(as('instructor'), { proof: first! }, later(1))).resolves.toBeDefined();
  });

  it('leads on the desk as the marker goes through it', async () => {
    const before = await queue('assistant');
    await skipProof(as('assistant'), { proof: before[1]!, to: 'skipped' }, { now });
    const line = await getProofLine(
      as('assistant'),
      { proof: crowdFirst(before), specimenId: crowd.specimen },
      { now },
    );
    const mine = [...before.slice(0, 1), ...before.slice(2), before[1]!];
    const place = mine.indexOf(crowdFirst(before));
    expect(line.queue).toMatchObject({ place: place + 1, of: 6, section: null });
    expect(line.go.nextStudent).toBe(mine[place + 1] ? `/critique/${mine[place + 1]}/${crowd.specimen}` : null);
  });

  it('gives two who take the next at once two proofs, and each proof once', async () => {
    const before = await queue('assistant');
    const got: (string | null)[] = [];
    const both = (who: 'assistant' | 'instructor') => async () => {
      got.push(await take(who, { after: null }));
    };
    await allAtOnce([both('assistant'), both('instructor')]);
    expect(new Set(got).size).toBe(2);
    // Each marker goes on from where they are until nothing waits; between them every proof is taken once.
    const taken = new Map<string, string>();
    for (const who of ['assistant', 'instructor'] as const) {
      let after: string | null = null;
      for (let step = 0; step < 8; step += 1) {
        after = await take(who, { after });
        if (after === null) break;
        expect(taken.get(after) ?? who).toBe(who);
        taken.set(after, who);
      }
    }
    expect([...taken.keys()].sort()).toEqual([...before].sort());
  });

  it('gives what was skipped only when nothing else waits, and nothing when all is taken or done', async () => {
    const before = await queue('assistant');
    await skipProof(as('assistant'), { proof: before[0]!, to: 'skipped' }, { now });
    expect(await take('assistant')).toBe(before[1]);
    await suite.db.markTask.updateMany({
      where: { roundId: ids.nextRound, alias: { not: await aliasOf(before[0]!) } },
      data: { state: 'done' },
    });
    expect(await take('assistant')).toBe(before[0]);
    expect(await take('instructor')).toBeNull();
    await unclaimProof(as('assistant'), { proof: before[0]! }, { now });
    expect(await take('instructor')).toBe(before[0]);
    // Left for longer than the lease lasts, it is free again.
    expect(await take('assistant', {}, later(11))).toBe(before[0]);
  });

  it('can be gone through by section, with its own progress', async () => {
    const other = newId();
    await suite.db.section.create({ data: { id: other, courseId: ids.course, name: 'Thursday', createdAt: now } });
    await suite.db.member.updateMany({
      where: { id: { in: crowd.students.slice(0, 2).map(({ member }) => member) } },
      data: { sectionId: other },
    });
    const shown = await getQueue(as('assistant'), { ...round(), section: other }, { now });
    expect(shown.sections.map(({ name, sent }) => [name, sent])).toEqual([
      ['Monday', 1],
      ['Thursday', 2],
    ]);
    expect(shown).toMatchObject({ count: 2, done: 0, section: { name: 'Thursday' } });
    const inSection = shown.queue.map(({ token }) => token);
    expect(await take('assistant', { section: other })).toBe(inSection[0]);
    expect(await take('assistant', { section: other, after: inSection[0] })).toBe(inSection[1]);
    expect(
      (
        await getProofLine(
          as('assistant'),
          { proof: inSection[0]!, specimenId: crowd.specimen, section: other },
          { now },
        )
      ).go.nextStudent,
    ).toBe(`/critique/${inSection[1]}/${crowd.specimen}?section=${other}`);
    await expect(queue('assistant', { section: newId() })).rejects.toMatchObject({ code: 'NOT_FOUND' });
  });

  it('has no sections while names are hidden and one of them is so small that it would name people', async () => {
    await suite.db.exercise.update({ where: { id: ids.exercise }, data: { settings: '{"namesHidden":true}' } });
    expect((await getQueue(as('assistant'), round(), { now })).sections).toEqual([]);
    await expect(queue('assistant', { section: ids.section })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await addCrowd(
      suite.db,
      ids,
      Array.from({ length: 4 }, () => [0, 0, 0, 0, 0]),
      now,
      { section: ids.section },
    );
    const { sections } = await getQueue(as('assistant'), round(), { now });
    expect(sections.map(({ name, sent }) => [name, sent])).toEqual([['Monday', 5]]);
  });

  const crowdFirst = (order: readonly string[]) =>
    order.find((token) => crowd.students.some(({ proof }) => proof === token))!;
  const aliasOf = async (proofId: string) => (await suite.db.markTask.findFirstOrThrow({ where: { proofId } })).alias;
});

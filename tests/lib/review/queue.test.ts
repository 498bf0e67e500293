import { beforeAll, expect, it } from 'vitest';
import { getClass, type ShownClass } from '@/lib/class/class';
import { getProofLine } from '@/lib/review/desk';
import { proofsPerPage, getQueue } from '@/lib/review/queue';
import { newId } from '@/lib/data/ids';
import { listNameOf } from '@/lib/data/members';
import { finishProof, unclaimProof } from '@/lib/review/claim';
import { claimNextProof } from '@/lib/review/next';
import { giveMark } from '@/lib/review/marks';
import { getReleasePlan } from '@/lib/release/plan';
import { fillWorld, type Ids } from '@/tests/access/fill-world';
import { describeOnBothDatabases } from '@/tests/fixtures/databases';
import { callerIn } from '@/tests/fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');
const more = 60;

/** The world's round 2, in which sixty more students have sent a proof. */
describeOnBothDatabases('the queue of a round with more proofs than a page holds', (suite) => {
  let ids: Ids;
  const members: string[] = [];
  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
    for (let index = 0; index < more; index += 1)
      members.push(await addStudent(`Ábel ${String(index).padStart(2, '0')}`));
  });
  const as = (who: Parameters<ReturnType<typeof callerIn>>[0]) => callerIn(ids)(who);
  const round = () => ({ exerciseId: ids.exercise, roundNumber: 2 });
  const queue = (page = 1) => getQueue(as('assistant'), { ...round(), page }, { now });
  const line = (token: string) => getProofLine(as('assistant'), { proof: token, specimenId: ids.specimen }, { now });
  const tokenIn = (address: string | null) => address?.split('/')[2] ?? null;

  it('is shown a page at a time; a page after the last is the last', async () => {
    const [first, second, beyond] = [await queue(1), await queue(2), await queue(99)];
    expect([first.queue.length, second.queue.length, first.pages, first.count]).toEqual([
      proofsPerPage,
      more + 1 - proofsPerPage,
      2,
      more + 1,
    ]);
    expect(beyond).toMatchObject({ page: 2, queue: second.queue });
    expect(new Set([...first.queue, ...second.queue].map(({ token }) => token)).size).toBe(more + 1);
    expect(
      (await getReleasePlan(as('instructor'), { ...round(), page: 1 }, { now })).rows.map(({ token }) => token),
    ).toEqual([...first.queue, ...second.queue].map(({ token }) => token));
  });

  it('leads from each proof to the next and back, and no further at the ends', async () => {
    const tokens = [...(await queue(1)).queue, ...(await queue(2)).queue].map(({ token }) => token);
    const [first, last] = [await line(tokens[0]!), await line(tokens.at(-1)!)];
    expect([first.go.previousStudent, tokenIn(first.go.nextStudent), first.queue.place]).toEqual([null, tokens[1], 1]);
    expect([tokenIn(last.go.previousStudent), last.go.nextStudent, last.go.nextLine, last.queue.place]).toEqual([
      tokens.at(-2),
      null,
      null,
      more + 1,
    ]);
    // Over the end of a page.
    const atEdge = await line(tokens[proofsPerPage - 1]!);
    expect([tokenIn(atEdge.go.previousStudent), tokenIn(atEdge.go.nextStudent)]).toEqual([
      tokens[proofsPerPage - 2],
      tokens[proofsPerPage],
    ]);
  });

  it('begins with the first that is open and that nobody else holds, and counts those that are marked', async () => {
    const [first, second, third] = (await queue()).queue.map(({ token }) => token) as [string, string, string];
    const next = async (who: 'assistant' | 'instructor') => {
      const { proof } = await claimNextProof(as(who), { ...round(), section: null, after: null }, { now });
      await unclaimProof(as(who), { proof: proof! }, { now });
      return proof;
    };
    expect(await next('assistant')).toBe(first);
    await giveMark(
      as('assistant'),
      { proofId: first, criterionVersionId: ids.criterionVersion, level: 1, version: -1, why: '' },
      { now },
    );
    await finishProof(as('assistant'), { proof: first, to: 'done' }, { now });
    expect((await queue()).done).toBe(1);
    expect(await next('assistant')).toBe(second);
    await suite.db.markTask.update({
      where: { proofId_slot: { proofId: second, slot: 'first' } },
      data: { markerId: ids.members.instructor, leaseUntil: new Date(now.getTime() + 60_000) },
    });
    expect(await next('assistant')).toBe(third);
    expect(await next('instructor')).toBe(second);
    expect((await line(second)).queue).toMatchObject({ done: 1, of: more + 1 });
  });

  it('leaves out who is removed, with what was marked of theirs, and takes in a proof that comes', async () => {
    const { queue: before, done } = await queue();
    const marked = await suite.db.proof.findUniqueOrThrow({ where: { id: before[0]!.token } });
    await suite.db.member.update({ where: { id: marked.memberId }, data: { removedAt: now } });
    expect(await queue()).toMatchObject({ count: more, done: done - 1 });
    expect((await queue()).queue.map(({ token }) => token)).not.toContain(marked.id);
    await suite.db.member.update({ where: { id: marked.memberId }, data: { removedAt: null } });
    expect(await queue()).toMatchObject({ count: more + 1, done });
    members.push(await addStudent('Zoë'));
    expect((await queue()).count).toBe(more + 2);
    // A second proof of the same student takes the place of the first.
    const again = await addProof(members.at(-1)!, 2);
    expect((await queue()).count).toBe(more + 2);
    expect((await line(again)).proof.counts).toBe(true);
  });

  it('names nobody on any page where names are hidden', async () => {
    await suite.db.exercise.update({ where: { id: ids.exercise }, data: { settings: '{"namesHidden":true}' } });
    const pages = [await queue(1), await queue(2)];
    const lastOfPage = await line(pages[0]!.queue.at(-1)!.token);
    for (const secret of ['Ábel', 'abel', 'Zoë', 'The student', ids.nextProof, ...members])
      expect(JSON.stringify([pages, lastOfPage])).not.toContain(secret);
    expect(tokenIn(lastOfPage.go.nextStudent)).toBe(pages[1]!.queue[0]!.token);
    await suite.db.exercise.update({ where: { id: ids.exercise }, data: { settings: '{}' } });
  });

  it('goes beside a class page that lists its students by name, accents aside, a page at a time', async () => {
    const page = async (number: number) =>
      (await getClass(as('assistant'), { exerciseId: ids.exercise, round: 2, page: number }, { now })) as ShownClass;
    const names = [
      ...(await page(1)).students,
      ...(await page(2)).students,
      ...(await page(3)).students,
      ...(await page(4)).students,
    ].map(({ name }) => name);
    expect(names).toEqual([
      ...Array.from({ length: more }, (_, index) => `Ábel ${String(index).padStart(2, '0')}`),
      'The otherStudent',
      'The student',
      'Zoë',
    ]);
    expect(await page(99)).toMatchObject({ page: 4, pages: 4, studentCount: more + 3 });
  });

  async function addStudent(name: string): Promise<string> {
    const [userId, memberId] = [newId(), newId()];
    await suite.db.user.create({ data: { id: userId, emailNorm: `${userId}@school.example`, name, createdAt: now } });
    await suite.db.member.create({
      data: { id: memberId, courseId: ids.course, userId, role: 'student', listName: listNameOf(name), joinedAt: now },
    });
    await addProof(memberId, 1);
    return memberId;
  }

  async function addProof(memberId: string, number: number): Promise<string> {
    const id = newId();
    await suite.db.proof.create({
      data: {
        id,
        roundId: ids.nextRound,
        memberId,
        number,
        requestKey: newId(),
        reasoning: 'r',
        receivedAt: new Date(now.getTime() + number),
        items: { create: { id: newId(), specimenVersionId: ids.specimenVersion, tracking: 0, offsets: '[-4]' } },
      },
    });
    return id;
  }
});

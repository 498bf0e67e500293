import { beforeAll, expect, it } from 'vitest';
import { scopedData } from '@/lib/data';
import { finishJob, addJob, retryJob, takeJob } from '@/lib/data/jobs';
import { openDatabase } from '@/lib/data/open';
import { isTaken, retryOnConflict } from '@/lib/data/retry';
import { fillWorld, type Ids } from '../../access/fill-world';
import { describeOnBothDatabases } from '../../fixtures/databases';

const now = new Date('2027-03-08T10:00:00Z');
const later = (minutes: number) => new Date(now.getTime() + minutes * 60_000);

// Half of the contenders use a second connection, as another process would.
describeOnBothDatabases('rules that hold for many at once', (suite) => {
  let ids: Ids;
  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
  });

  const contend = async <T>(count: number, work: (db: typeof suite.db, index: number) => Promise<T>): Promise<T[]> => {
    const second = openDatabase(suite.url);
    try {
      return await Promise.all(Array.from({ length: count }, (_, index) => work(index % 2 ? second : suite.db, index)));
    } finally {
      await second.$disconnect();
    }
  };
  const asSystem = (db: typeof suite.db) => scopedData({ kind: 'system', reason: 'test' }, db);

  it('one of twenty markers gets a free task, and the next one only when the lease has run out', async () => {
    const task = await suite.db.markTask.create({
      data: { id: 'race-task', proofId: ids.nextProof, slot: 'second', alias: 'race', state: 'open', createdAt: now },
    });
    const markers = [ids.members.assistant, ids.members.instructor];
    const taken = await contend(20, (db, index) =>
      asSystem(db).markTasks.take(task, markers[index % 2]!, later(10), now),
    );
    const { markerId } = await suite.db.markTask.findUniqueOrThrow({ where: { id: task.id } });
    const winners = taken.flatMap((got, index) => (got ? [markers[index % 2]] : []));
    expect(winners).toEqual([markerId]);
    const other = markers.find((id) => id !== markerId)!;
    expect(await asSystem(suite.db).markTasks.take({ ...task, version: 1 }, other, later(20), later(9))).toBe(false);
    expect(await asSystem(suite.db).markTasks.take({ ...task, version: 1 }, other, later(30), later(11))).toBe(true);
  });

  it('eight reference sets made at once get eight numbers in a row', async () => {
    const numbers = await contend(8, (db) =>
      retryOnConflict(async () => {
        const last = await asSystem(db).referenceSets.latest(ids.exercise);
        const number = (last?.number ?? 0) + 1;
        await asSystem(db).referenceSets.create(ids.exercise, number, ids.members.instructor, [], now);
        return number;
      }, 60),
    );
    expect(numbers.sort((one, other) => one - other)).toEqual([2, 3, 4, 5, 6, 7, 8, 9]);
  });

  it('one of ten releases of the same number goes out, and a correction is the next', async () => {
    const release = (number: number) => ({
      roundId: ids.round,
      memberId: ids.members.student,
      number,
      proofId: ids.proof,
      referenceSetId: ids.referenceSet,
      engine: 1,
      snapshot: '{}',
      releasedById: ids.members.instructor,
      releasedAt: now,
    });
    const outcomes = await contend(10, (db) =>
      asSystem(db)
        .releases.create([release(7)])
        .then(
          () => 'out',
          (error) => (isTaken(error) ? 'taken' : String(error)),
        ),
    );
    expect(outcomes.filter((outcome) => outcome === 'out')).toHaveLength(1);
    expect(outcomes.filter((outcome) => outcome === 'taken')).toHaveLength(9);
    await asSystem(suite.db).releases.create([release(8)]);
    expect(await suite.db.release.count({ where: { roundId: ids.round, number: { in: [7, 8] } } })).toBe(2);
  });

  it('a release to many is all or nothing', async () => {
    const release = (memberId: string, number: number) => ({
      roundId: ids.nextRound,
      memberId,
      number,
      proofId: ids.nextProof,
      referenceSetId: null,
      engine: 1,
      snapshot: '{}',
      releasedById: ids.members.instructor,
      releasedAt: now,
    });
    await asSystem(suite.db).releases.create([release(ids.members.otherStudent, 1)]);
    await expect(
      asSystem(suite.db).transaction(async (inside) => {
        await inside.releases.create([release(ids.members.student, 1)]);
        await inside.releases.create([release(ids.members.otherStudent, 1)]);
      }),
    ).rejects.toMatchObject({ code: 'P2002' });
    expect(await suite.db.release.count({ where: { roundId: ids.nextRound } })).toBe(1);
  });

  it('a link that works once works for one of fifteen', async () => {
    const link = await asSystem(suite.db).oneTimeLinks.make(
      {
        purpose: 'reset-password',
        tokenHash: 'race',
        userId: ids.users.student,
        createdById: null,
        expiresAt: later(60),
      },
      now,
    );
    const used = await contend(15, (db) => asSystem(db).oneTimeLinks.use(link.id, now));
    expect(used.filter(Boolean)).toHaveLength(1);
  });

  it('a person is a member of a course once', async () => {
    const outcomes = await contend(8, (db) =>
      asSystem(db)
        .members.add({ courseId: ids.otherCourse, userId: ids.users.student, role: 'student', sectionId: null }, now)
        .then(
          () => 'in',
          (error) => (isTaken(error) ? 'taken' : String(error)),
        ),
    );
    expect(outcomes.sort()).toEqual(['in', ...Array.from({ length: 7 }, () => 'taken')]);
  });

  it('every try at a password is counted', async () => {
    const tries = await Promise.all(
      Array.from({ length: 20 }, () => asSystem(suite.db).rateLimits.take('sign-in-minutes', 'race@school.example')),
    );
    expect(tries.filter(({ allowed }) => allowed)).toHaveLength(8);
  });

  it('work is listed once, done by one, and taken over when its holder died', async () => {
    const job = { kind: 'mail', key: 'welcome', payload: { to: 'x' }, dueAt: now };
    const added = await contend(6, (db) => retryOnConflict(() => addJob(db, job, now)));
    expect(added.filter(Boolean)).toHaveLength(1);
    const taken = (await contend(12, (db) => takeJob(db, 'mail', 5, now))).filter((each) => each !== null);
    expect(taken).toHaveLength(1);
    expect(await takeJob(suite.db, 'mail', 5, later(4))).toBeNull();
    const second = await takeJob(suite.db, 'mail', 5, later(6));
    expect(second).toMatchObject({ key: 'welcome', attempts: 2, payload: '{"to":"x"}' });
    expect(await finishJob(suite.db, taken[0]!, later(7))).toBe(false);
    expect(await retryJob(suite.db, second!, 'the mail server did not answer', later(20))).toBe(true);
    expect(await takeJob(suite.db, 'mail', 5, later(19))).toBeNull();
    const third = await takeJob(suite.db, 'mail', 5, later(20));
    expect(await finishJob(suite.db, third!, later(21))).toBe(true);
    expect(await takeJob(suite.db, 'mail', 5, later(60))).toBeNull();
  });

  it('what something else hangs on cannot be deleted, and a person’s going leaves the member', async () => {
    await expect(suite.db.proof.delete({ where: { id: ids.proof } })).rejects.toMatchObject({ code: 'P2003' });
    const user = await suite.db.user.create({
      data: { id: 'gone', emailNorm: 'gone@school.example', name: 'Gone', createdAt: now },
    });
    const member = await suite.db.member.create({
      data: { id: 'stays', courseId: ids.course, userId: user.id, role: 'student', joinedAt: now },
    });
    await suite.db.user.delete({ where: { id: user.id } });
    expect(await suite.db.member.findUnique({ where: { id: member.id } })).toMatchObject({ userId: null });
  });

  it('gives back what was put in, to the letter, the byte and the millisecond', async () => {
    const at = new Date('2027-03-08T10:00:00.007Z');
    const bytes = new Uint8Array([0, 1, 127, 128, 255]);
    await suite.db.asset.create({
      data: { sha256: 'b'.repeat(64), bytes, mime: 'font/ttf', name: 'Ærø – “x” 𝔞', licence: '{}', createdAt: at },
    });
    const asset = await suite.db.asset.findUniqueOrThrow({ where: { sha256: 'b'.repeat(64) } });
    expect([...asset.bytes]).toEqual([...bytes]);
    expect(asset.name).toBe('Ærø – “x” 𝔞');
    expect(asset.createdAt.toISOString()).toBe('2027-03-08T10:00:00.007Z');
  });
});

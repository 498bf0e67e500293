import { beforeAll, expect, it } from 'vitest';
import { getClass, type ShownClass } from '@/lib/class/class';
import { getQueue } from '@/lib/review/queue';
import { newId } from '@/lib/data/ids';
import { listNameOf } from '@/lib/data/members';
import { exportMarks } from '@/lib/export/marks';
import { releaseRound } from '@/lib/release/release';
import { getReleasePlan } from '@/lib/release/plan';
import { fillWorld, type Ids } from '../../access/fill-world';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { callerIn } from '../../fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');
const [students, lines] = [1000, 10];

/** More students than some databases take values in one statement, each with a proof of ten lines in round 2. */
describeOnBothDatabases('a class of a thousand', (suite) => {
  let ids: Ids;
  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
    const { db } = suite;
    const people = Array.from({ length: students }, (_, index) => ({
      userId: newId(),
      memberId: newId(),
      proofId: newId(),
      name: `Person ${index}`,
    }));
    const versions = Array.from({ length: lines }, (_, index) => ({
      specimenId: newId(),
      id: newId(),
      position: index + 2,
    }));
    await db.specimen.createMany({
      data: versions.map(({ specimenId, position }) => ({
        id: specimenId,
        exerciseId: ids.exercise,
        position,
        createdAt: now,
      })),
    });
    await db.specimenVersion.createMany({
      data: versions.map(({ id, specimenId }) => ({
        id,
        specimenId,
        number: 1,
        text: 'HO',
        packSha: 'a'.repeat(64),
        size: 96,
        unit: 'px',
        ground: 'light',
        createdAt: now,
      })),
    });
    await db.user.createMany({
      data: people.map(({ userId, name }) => ({
        id: userId,
        emailNorm: `${userId}@school.example`,
        name,
        createdAt: now,
      })),
    });
    await db.member.createMany({
      data: people.map(({ memberId, userId, name }) => ({
        id: memberId,
        courseId: ids.course,
        userId,
        role: 'student',
        listName: listNameOf(name),
        joinedAt: now,
      })),
    });
    await db.proof.createMany({
      data: people.map(({ proofId, memberId }) => ({
        id: proofId,
        roundId: ids.nextRound,
        memberId,
        number: 1,
        requestKey: newId(),
        reasoning: 'r',
        receivedAt: now,
      })),
    });
    await db.proofItem.createMany({
      data: people.flatMap(({ proofId }) =>
        versions.map(({ id }) => ({ id: newId(), proofId, specimenVersionId: id, tracking: 0, offsets: '[-4]' })),
      ),
    });
  }, 120_000);
  const round = () => ({ exerciseId: ids.exercise, roundNumber: 2 });
  const instructor = () => callerIn(ids)('instructor');

  it('has a queue, a class page, an export of marks and a plan of the release', async () => {
    expect(await getQueue(instructor(), { ...round(), page: 20 }, { now })).toMatchObject({
      count: students + 1,
      page: 20,
      pages: 21,
    });
    expect(
      ((await getClass(instructor(), { exerciseId: ids.exercise, round: 2, page: 2 }, { now })) as ShownClass).students,
    ).toHaveLength(20);
    // The head, and every student of the course: the world has two students of its own.
    expect((await exportMarks(instructor(), round(), { now })).csv.trim().split('\n')).toHaveLength(students + 3);
    expect((await getReleasePlan(instructor(), { ...round(), page: 10 }, { now })).rows).toHaveLength(100);
  }, 60_000);

  it('gets a release by the page', async () => {
    const { rows } = await getReleasePlan(instructor(), { ...round(), page: 1 }, { now });
    expect(
      await releaseRound(
        instructor(),
        { ...round(), to: rows.map(({ token, seen }) => ({ proofId: token, seen })) },
        { now },
      ),
    ).toMatchObject({ released: 100 });
  }, 60_000);
});

import { beforeAll, expect, it } from 'vitest';
import type { Caller } from '@/lib/access/caller';
import { openBench } from '@/lib/work/bench';
import { setAccommodations } from '@/lib/course/members';
import type { Accommodations } from '@/shared/schemas/course';
import { fillWorld, type Ids } from '@/tests/access/fill-world';
import { describeOnBothDatabases } from '@/tests/fixtures/databases';

const now = new Date('2027-03-08T10:00:00Z');

/** What is set for one student on the people page applies on that student's bench, and on no other. */
describeOnBothDatabases('accommodations on the bench', (suite) => {
  let ids: Ids;
  const caller = (who: 'student' | 'otherStudent' | 'instructor'): Caller => ({
    kind: 'person',
    userId: ids.users[who],
    sessionId: ids.sessions[who],
    address: '192.0.2.1',
  });
  const grant = (accommodations: Accommodations) =>
    setAccommodations(
      caller('instructor'),
      { courseId: ids.course, memberId: ids.members.otherStudent, accommodations },
      { now },
    );
  const bench = (who: Parameters<typeof caller>[0]) =>
    openBench(caller(who), { exerciseId: ids.exercise, specimenId: ids.specimen }, { now });

  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
  });

  it('what the bench tells goes before the exercise’s own rule', async () => {
    expect((await bench('otherStudent')).tells).toBe('nothing');
    await grant({ benchTells: 'evenness' });
    expect((await bench('otherStudent')).tells).toBe('evenness');
  });

  it('size of the working view, spoken gaps and keys that are off reach that bench alone', async () => {
    const before = (await bench('student')).accommodations;
    await grant({ workingView: 1.5, gapsSpoken: true, singleKeysOff: true });
    expect((await bench('otherStudent')).accommodations).toMatchObject({
      workingView: 1.5,
      gapsSpoken: true,
      singleKeysOff: true,
    });
    expect((await bench('student')).accommodations).toEqual(before);
    await grant({});
    expect((await bench('otherStudent')).accommodations).toEqual({});
  });

  it('more time is a later due date, by its share of the time from opening to the due date', async () => {
    const plain = (await bench('otherStudent')).round!.dueAt!;
    await grant({ moreTime: 50 });
    const longer = (await bench('otherStudent')).round!.dueAt!;
    const { opensAt, dueAt } = await suite.db.round.findUniqueOrThrow({ where: { id: ids.nextRound } });
    // By hand: the due date and half of the time between opening and it.
    expect(plain).toBe(dueAt!.getTime());
    expect(longer - plain).toBe((dueAt!.getTime() - opensAt!.getTime()) / 2);
  });
});

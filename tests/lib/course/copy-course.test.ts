import { beforeAll, describe, expect, it } from 'vitest';
import { copyCourse, movedDates, previewCopy } from '@/lib/course/copy';
import { newId } from '@/lib/data/ids';
import { fillWorld, type Ids } from '../../access/fill-world';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { callerIn } from '../../fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');

describe('dates that are moved', () => {
  const round = (fields: object) =>
    ({ lateRule: '{}', opensLocal: null, dueLocal: null, ...fields }) as Parameters<typeof movedDates>[0];

  it('keep the hour over a change of the clocks, and the day of the week over whole weeks', () => {
    // Lisbon goes forward on 28 March 2027: 18:00 is 18:00 UTC before and 17:00 UTC after (IANA tz database).
    const moved = movedDates(round({ dueLocal: '2027-03-22T18:00' }), 7, 'Europe/Lisbon');
    expect(moved).toMatchObject({ dueLocal: '2027-03-29T18:00', dueAt: new Date('2027-03-29T17:00:00Z'), remarks: [] });
    expect(movedDates(round({ dueLocal: '2027-03-22T18:00' }), 0, 'Europe/Lisbon').dueAt).toEqual(
      new Date('2027-03-22T18:00:00Z'),
    );
  });

  it('say what was decided where an hour does not happen', () => {
    expect(movedDates(round({ dueLocal: '2027-03-21T01:30' }), 7, 'Europe/Lisbon').remarks[0]).toContain(
      'does not happen',
    );
  });

  it('take the last date for late proofs along, or leave it with the others', () => {
    const rule = round({
      dueLocal: '2027-02-01T18:00',
      lateRule: JSON.stringify({
        accept: 'until',
        untilLocal: '2027-02-03T18:00',
        untilAt: '2027-02-03T18:00:00.000Z',
        deductPerDay: 5,
      }),
    });
    expect(movedDates(rule, 14, 'Europe/Lisbon').lateRule).toEqual({
      accept: 'until',
      untilLocal: '2027-02-17T18:00',
      untilAt: '2027-02-17T18:00:00.000Z',
      deductPerDay: 5,
    });
    expect(movedDates(rule, null, 'Europe/Lisbon')).toMatchObject({
      dueLocal: null,
      lateRule: { accept: 'always', untilLocal: null, deductPerDay: 5 },
    });
  });
});

describeOnBothDatabases('a course taken on to the next term', (suite) => {
  let ids: Ids;
  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
    await suite.db.round.update({ where: { id: ids.nextRound }, data: { dueLocal: '2027-03-13T11:00' } });
    await suite.db.reference.create({
      data: {
        id: newId(),
        specimenVersionId: ids.specimenVersion,
        authorId: ids.members.assistant,
        slot: 1,
        tracking: 0,
        offsets: '[-7]',
        tolerances: '[8]',
        reasons: '[null]',
        updatedAt: now,
      },
    });
  });
  const as = (who: Parameters<ReturnType<typeof callerIn>>[0]) => callerIn(ids)(who);

  it('is looked at before it is made, and that writes nothing', async () => {
    const preview = await previewCopy(as('instructor'), { courseId: ids.course, dates: 'moved', days: 364 }, { now });
    expect(preview).toMatchObject({ references: 1, othersReferences: 1, stockNotes: 1 });
    expect(preview.exercises[0]!.rounds[1]).toMatchObject({
      before: { due: '2027-03-13T11:00' },
      after: { due: '2028-03-11T11:00' },
    });
    expect(await suite.db.course.count()).toBe(2);
  });

  it('has what was planned, and nobody and nothing of anybody but the one who copied', async () => {
    const { courseId } = await copyCourse(
      as('instructor'),
      { courseId: ids.course, title: 'Display type, next term', dates: 'moved', days: 364 },
      { now },
    );
    const { db } = suite;
    const course = await db.course.findUniqueOrThrow({
      where: { id: courseId },
      include: { members: true, sections: true, stockNotes: true, joinLinks: true },
    });
    expect(course).toMatchObject({
      title: 'Display type, next term',
      timeZone: 'Europe/Vienna',
      retainUntil: null,
      sections: [],
      joinLinks: [],
    });
    expect(course.members.map(({ userId, role }) => [userId, role])).toEqual([[ids.users.instructor, 'instructor']]);
    expect(course.stockNotes.map(({ body, authorId, shared }) => [body, authorId, shared])).toEqual([
      ['Look at it upside down.', course.members[0]!.id, true],
    ]);
    const [exercise] = await db.exercise.findMany({
      where: { courseId },
      include: {
        rounds: { orderBy: { number: 'asc' }, include: { proofs: true, releases: true } },
        criteria: { include: { versions: true } },
        specimens: { include: { versions: { include: { references: true, drafts: true } } } },
      },
    });
    expect(exercise).toMatchObject({ title: 'First lines', state: 'draft', publishedAt: null });
    expect(
      exercise!.rounds.map(({ number, state, dueLocal, markingStartedAt, proofs, releases }) => [
        number,
        state,
        dueLocal,
        markingStartedAt,
        proofs,
        releases,
      ]),
    ).toEqual([
      [1, 'open', null, null, [], []],
      [2, 'open', '2028-03-11T11:00', null, [], []],
    ]);
    expect(exercise!.criteria[0]!.versions).toMatchObject([{ number: 1, title: 'Evenness' }]);
    const [version] = exercise!.specimens[0]!.versions;
    expect(version).toMatchObject({ number: 1, text: 'HO', packSha: 'a'.repeat(64), previousId: null, drafts: [] });
    // The instructor's own −10, not the assistant's −7.
    expect(version!.references.map(({ offsets, authorId }) => [offsets, authorId])).toEqual([
      ['[-10]', course.members[0]!.id],
    ]);
    expect(await db.pack.count()).toBe(1);
    expect(await db.auditEvent.count({ where: { verb: 'course copied', courseId: ids.course } })).toBe(1);
  });

  it('is not for those who may not open courses', async () => {
    await suite.db.user.update({ where: { id: ids.users.instructor }, data: { mayCreateCourses: false } });
    await expect(
      copyCourse(as('instructor'), { courseId: ids.course, title: 'Again', dates: 'empty', days: 0 }, { now }),
    ).rejects.toMatchObject({ code: 'CONFLICT' });
  });
});

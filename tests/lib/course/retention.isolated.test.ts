import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { systemCaller } from '@/lib/access/caller';
import { daysLeft, endRetention, noticeDue, getRetention, sendRetentionNotices } from '@/lib/course/retention';
import { fillWorld, type Ids } from '@/tests/access/fill-world';
import { describeOnBothDatabases } from '@/tests/fixtures/databases';
import { callerIn } from '@/tests/fixtures/world-callers';

const mail = vi.hoisted(() => ({ sent: [] as { to: string; subject: string; text: string }[], refuse: false }));
vi.mock('@/lib/mail/send', () => ({
  mailIsSetUp: () => true,
  sendMail: async (letter: (typeof mail.sent)[number]) => {
    if (mail.refuse) throw new Error('The mail server is silent.');
    mail.sent.push(letter);
  },
}));

describe('the day until which work is kept', () => {
  it('is counted on the calendar of the course’s zone', () => {
    // 23:30 UTC on the 7th is 8 March in Vienna (UTC+1) and still the 7th in New York.
    const late = new Date('2027-03-07T23:30:00Z');
    expect(daysLeft('2027-03-09', 'Europe/Vienna', late)).toBe(1);
    expect(daysLeft('2027-03-09', 'America/New_York', late)).toBe(2);
    expect(daysLeft('2027-03-08', 'Europe/Vienna', late)).toBe(0);
    expect(daysLeft('2027-03-07', 'Europe/Vienna', late)).toBe(-1);
    expect(daysLeft('2027-09-30', 'Europe/Vienna', new Date('2027-08-31T10:00:00Z'))).toBe(30);
  });

  it('is told of 30 and 7 days before', () => {
    expect([31, 30, 8, 7, 0, -1].map(noticeDue)).toEqual([null, 30, 30, 7, 7, null]);
  });
});

describeOnBothDatabases('retention', (suite) => {
  let ids: Ids;
  beforeAll(async () => {
    ids = await fillWorld(suite.db, new Date('2027-03-08T10:00:00Z'));
  });
  beforeEach(() => {
    mail.sent.length = 0;
    mail.refuse = false;
  });
  const as = (who: Parameters<ReturnType<typeof callerIn>>[0]) => callerIn(ids)(who);
  const send = (at: string) => sendRetentionNotices(systemCaller('test'), {}, { now: new Date(at) });
  const until = (retainUntil: string | null) =>
    suite.db.course.update({ where: { id: ids.course }, data: { retainUntil } });

  it('is told to those who teach, once for each notice, however many processes look', async () => {
    await until('2027-05-01');
    expect(await send('2027-03-20T10:00:00Z')).toEqual({ letters: 0 });
    const results = await Promise.all(Array.from({ length: 4 }, () => send('2027-04-02T10:00:00Z')));
    expect(results.reduce((sum, { letters }) => sum + letters, 0)).toBe(1);
    expect(mail.sent).toMatchObject([
      { to: 'instructor@school.example', text: expect.stringContaining('2027-05-01, 29 days from now') },
    ]);
    await send('2027-04-10T10:00:00Z');
    expect(mail.sent).toHaveLength(1);
    await send('2027-04-24T10:00:00Z');
    await send('2027-04-30T10:00:00Z');
    expect(mail.sent).toHaveLength(2);
  });

  it('is told again when the mail server refused, and not when the day was moved meanwhile', async () => {
    await until('2027-06-01');
    mail.refuse = true;
    expect(await send('2027-05-30T10:00:00Z')).toEqual({ letters: 0 });
    mail.refuse = false;
    expect(await send('2027-05-30T10:10:00Z')).toEqual({ letters: 0 });
    await until('2028-06-01');
    expect(await send('2027-05-30T12:00:00Z')).toEqual({ letters: 0 });
    expect(mail.sent).toEqual([]);
  });

  it('does not end before its day, without one, or without the title; nothing goes by itself', async () => {
    const end = (title: string, at: string) =>
      endRetention(as('instructor'), { courseId: ids.course, title }, { now: new Date(at) });
    await until(null);
    await expect(end('Display type', '2027-09-01T10:00:00Z')).rejects.toMatchObject({
      code: 'CONFLICT',
      userMessage: expect.stringContaining('no day'),
    });
    await until('2027-09-01');
    await expect(end('Display type', '2027-09-01T10:00:00Z')).rejects.toMatchObject({
      code: 'CONFLICT',
      userMessage: expect.stringContaining('not past yet'),
    });
    await expect(end('Display', '2027-09-02T10:00:00Z')).rejects.toMatchObject({
      code: 'INVALID',
      fields: { title: expect.stringContaining('“Display type”') },
    });
    expect(
      await getRetention(as('instructor'), { courseId: ids.course }, { now: new Date('2027-09-02T10:00:00Z') }),
    ).toMatchObject({ daysLeft: -1, near: true, students: 3 });
  });

  it('once ended leaves spacings and marks, and of the students neither names nor words; those who teach stay', async () => {
    const { db } = suite;
    await db.auditEvent.create({
      data: {
        id: 'joined',
        courseId: ids.course,
        actorId: ids.users.student,
        verb: 'member joined',
        subject: `member:${ids.members.student}`,
        at: new Date(),
      },
    });
    const kept = async () => [
      await db.proofItem.count(),
      await db.mark.count(),
      await db.measurement.count(),
      await db.note.count(),
      await db.release.count(),
      await db.draft.count(),
    ];
    const before = await kept();
    expect(
      await endRetention(
        as('instructor'),
        { courseId: ids.course, title: ' Display type' },
        { now: new Date('2027-09-02T10:00:00Z') },
      ),
    ).toEqual({ students: 3 });
    expect(await kept()).toEqual(before);
    const students = await db.member.findMany({ where: { courseId: ids.course, role: 'student' } });
    for (const one of students)
      expect(one).toMatchObject({
        userId: null,
        sectionId: null,
        listName: '',
        accommodations: '{}',
        removedAt: expect.any(Date),
      });
    expect(
      await db.member.count({ where: { courseId: ids.course, role: { not: 'student' }, userId: { not: null } } }),
    ).toBe(2);
    const words = JSON.stringify([
      await db.proof.findMany(),
      await db.noteEntry.findMany(),
      await db.release.findMany(),
      await db.markEvent.findMany(),
      await db.auditEvent.findMany({ where: { courseId: ids.course } }),
    ]);
    for (const gone of ['H and O looked open.', 'A little closer.', 'Not released yet.', ids.users.student])
      expect(words).not.toContain(gone);
    expect((await db.user.findUniqueOrThrow({ where: { id: ids.users.student } })).name).toBe('The student');
    expect(
      await db.auditEvent.count({
        where: { verb: 'retention ended', courseId: ids.course, actorId: ids.users.instructor },
      }),
    ).toBe(1);
  });
});

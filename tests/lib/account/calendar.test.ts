import ICAL from 'ical.js';
import { beforeEach, expect, it } from 'vitest';
import { exportOwnData } from '@/lib/account/records';
import { getCalendarFeed, makeCalendarFeed, readCalendarFeed, revokeCalendarFeed } from '@/lib/account/calendar';
import { fillWorld, type Ids } from '@/tests/access/fill-world';
import { describeOnBothDatabases } from '@/tests/fixtures/databases';
import { emptyAll } from '@/tests/fixtures/empty-all';
import { allAtOnce, callerIn } from '@/tests/fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');
const days = (count: number) => new Date(now.getTime() + count * 86_400_000);
const stranger = { kind: 'visitor', address: '192.0.2.77' } as const;

/** Round 1 was due ten days ago, round 2 is in five days and for the student in six; read with another parser. */
describeOnBothDatabases('a person’s calendar', (suite) => {
  let ids: Ids;
  beforeEach(async () => {
    await emptyAll(suite);
    await suite.db.rateLimit.deleteMany();
    ids = await fillWorld(suite.db, now);
  });
  const as = (who: Parameters<ReturnType<typeof callerIn>>[0]) => callerIn(ids)(who);
  const make = async (who: Parameters<typeof as>[0]) =>
    (await makeCalendarFeed(as(who), {}, { now })).path.split('/').at(-1)!;
  const read = async (token: string) => (await readCalendarFeed(stranger, { token }, { now })).text;
  const eventsIn = (text: string) =>
    new ICAL.Component(ICAL.parse(text) as unknown[])
      .getAllSubcomponents('vevent')
      .map((each) => new ICAL.Event(each))
      .map(({ uid, summary, startDate }) => ({
        uid,
        summary,
        at: startDate.toJSDate().toISOString(),
        zone: startDate.zone?.tzid,
      }));
  const due = (text: string, round: string) => eventsIn(text).find(({ uid }) => uid.startsWith(`${round}-due@`));

  it('says when rounds open and are due for this person, as instants in UTC', async () => {
    const text = await read(await make('student'));
    const { round, nextRound } = ids;
    const times = Object.fromEntries(eventsIn(text).map(({ uid, at }) => [uid.split('@')[0], at]));
    expect(times).toEqual({
      [`${round}-opens`]: days(-30).toISOString(),
      [`${round}-due`]: days(-10).toISOString(),
      [`${nextRound}-opens`]: days(-5).toISOString(),
      [`${nextRound}-due`]: days(6).toISOString(),
    });
    expect(new Set(eventsIn(text).map(({ zone }) => zone))).toEqual(new Set(['UTC']));
    expect(due(text, nextRound)?.summary).toBe('First lines: round 2 is due');
    // Lines of at most 75 octets that end in CR LF (RFC 5545, 3.1).
    for (const line of text.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    const other = await read(await make('otherStudent'));
    expect(due(other, ids.nextRound)?.at).toBe(days(5).toISOString());
  });

  it('follows the dates of the section and keeps its UIDs', async () => {
    const token = await make('student');
    const before = due(await read(token), ids.nextRound)!;
    await suite.db.roundExtension.deleteMany();
    await suite.db.roundSection.create({
      data: { id: 'own', roundId: ids.nextRound, sectionId: ids.section, dueAt: days(3), version: 4 },
    });
    const after = due(await read(token), ids.nextRound)!;
    expect([after.uid, after.at]).toEqual([before.uid, days(3).toISOString()]);
    const other = await read(await make('otherStudent'));
    expect([due(other, ids.nextRound)?.at, other.includes('Monday')]).toEqual([days(5).toISOString(), false]);
    const staff = await read(await make('assistant'));
    expect(eventsIn(staff).map(({ summary }) => summary)).toContain('First lines: round 2 is due for Monday');
  });

  it('is the same text until something changes', async () => {
    const token = await make('student');
    expect(await read(token)).toBe(await read(token));
  });

  it('holds nobody’s name, no draft exercise, and nothing of a course that was left, archived or put aside', async () => {
    const token = await make('student');
    const text = await read(token);
    for (const { name, emailNorm } of await suite.db.user.findMany()) {
      expect(text).not.toContain(name);
      expect(text).not.toContain(emailNorm);
    }
    const empty = async () => eventsIn(await read(token)).length;
    await suite.db.exercise.update({ where: { id: ids.exercise }, data: { state: 'draft' } });
    expect(await empty()).toBe(0);
    await suite.db.exercise.update({ where: { id: ids.exercise }, data: { state: 'published', removedAt: now } });
    expect(await empty()).toBe(0);
    await suite.db.exercise.update({ where: { id: ids.exercise }, data: { removedAt: null } });
    expect(await empty()).toBe(4);
    await suite.db.course.update({ where: { id: ids.course }, data: { state: 'archived' } });
    expect(await empty()).toBe(0);
    await suite.db.course.update({ where: { id: ids.course }, data: { state: 'active' } });
    await suite.db.member.update({ where: { id: ids.members.student }, data: { removedAt: now } });
    expect(await empty()).toBe(0);
  });

  it('is kept as a hash; a new address ends the one before, and revoking ends it', async () => {
    const first = await make('student');
    expect(JSON.stringify(await suite.db.calendarFeed.findMany())).not.toContain(first);
    const second = await make('student');
    await expect(read(first)).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await read(second);
    expect((await getCalendarFeed(as('student'), {}, { now })).since).toEqual(now);
    expect((await getCalendarFeed(as('otherStudent'), {}, { now })).since).toBeNull();
    await revokeCalendarFeed(as('otherStudent'), {}, { now });
    await read(second);
    await revokeCalendarFeed(as('student'), {}, { now });
    await expect(read(second)).rejects.toMatchObject({ code: 'NOT_FOUND' });
    const own = JSON.stringify(await exportOwnData(as('student'), {}, { now }));
    expect([own.includes(first), own.includes(second)]).toEqual([false, false]);
  });

  it('made many times at once it is one address, which works', async () => {
    const tokens: string[] = [];
    await allAtOnce(Array.from({ length: 5 }, () => async () => void tokens.push(await make('student'))));
    expect(await suite.db.calendarFeed.count()).toBe(1);
    const answers = await Promise.allSettled(tokens.map(read));
    expect(answers.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
  });

  it('guessing is counted by address, and reading is not', async () => {
    const token = await make('student');
    for (let asked = 0; asked < 130; asked += 1) await read(token);
    const guess = () => read('x'.repeat(43)).catch((error: { code: string }) => error.code);
    const answers = new Set<string>();
    for (let asked = 0; asked < 125; asked += 1) answers.add(await guess());
    expect(answers).toEqual(new Set(['NOT_FOUND', 'TOO_MANY']));
    await read(token);
  });

  it('ends with the account', async () => {
    const token = await make('student');
    await suite.db.user.update({ where: { id: ids.users.student }, data: { erasedAt: now } });
    await expect(read(token)).rejects.toMatchObject({ code: 'NOT_FOUND' });
  });
});

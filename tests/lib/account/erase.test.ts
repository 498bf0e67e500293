import { beforeEach, expect, it } from 'vitest';
import type { Caller } from '@/lib/access/caller';
import { eraseAccount } from '@/lib/account/erase';
import { exportOwnData } from '@/lib/account/records';
import { secrets, fillWorld, type Ids } from '../../access/fill-world';
import { describeOnBothDatabases } from '../../fixtures/databases';

const now = new Date('2027-03-08T10:00:00Z');

describeOnBothDatabases('one’s own records', (suite) => {
  let ids: Ids;
  let student: Caller;
  beforeEach(async () => {
    if (ids) return;
    ids = await fillWorld(suite.db, now);
    student = { kind: 'person', userId: ids.users.student, sessionId: ids.sessions.student, address: '192.0.2.1' };
  });

  it('hold what the person made and what was released to them, and nothing that is not released or somebody else’s', async () => {
    const records = JSON.stringify(await exportOwnData(student, {}, { now }));
    expect(records).toContain('H and O looked open.');
    expect(records).toContain('student@school.example');
    for (const hidden of ['Not released yet.', 'argon2id', 'otherstudent@', 'hash-student', secrets.password])
      expect(records).not.toContain(hidden);
  });

  it('are not erased by a slip', async () => {
    await expect(
      eraseAccount(student, { email: 'other@school.example', password: secrets.password }),
    ).rejects.toMatchObject({ code: 'INVALID', fields: { email: expect.any(String) } });
    await expect(
      eraseAccount(student, { email: 'student@school.example', password: 'not this one' }),
    ).rejects.toMatchObject({ code: 'INVALID', fields: { password: expect.any(String) } });
  });

  it('once erased, leave spacings and marks without anything that names the person or was written by or about them', async () => {
    const counts = async () =>
      Promise.all([
        suite.db.proof.count(),
        suite.db.proofItem.count(),
        suite.db.mark.count(),
        suite.db.draft.count(),
        suite.db.measurement.count(),
        suite.db.note.count(),
        suite.db.member.count(),
      ]);
    const before = await counts();
    await eraseAccount(student, { email: 'student@school.example', password: secrets.password }, { now });
    expect(await counts()).toEqual(before);

    const { db } = suite;
    const everything = JSON.stringify([
      await db.user.findMany(),
      await db.member.findMany(),
      await db.proof.findMany(),
      await db.noteEntry.findMany(),
      await db.release.findMany(),
      await db.markEvent.findMany(),
      await db.auditEvent.findMany(),
    ]);
    for (const gone of [
      'student@school.example"',
      'The student"',
      'the student',
      'H and O looked open.',
      'A little closer.',
      'Not released yet.',
    ])
      expect(everything.replace('otherstudent@school.example"', '').includes(gone)).toBe(false);
    expect(await db.member.findUniqueOrThrow({ where: { id: ids.members.student } })).toMatchObject({
      userId: null,
      accommodations: '{}',
      sectionId: null,
      removedAt: now,
    });
    expect(await db.authSession.count({ where: { userId: ids.users.student } })).toBe(0);
    expect(await db.oneTimeLink.count({ where: { userId: ids.users.student } })).toBe(0);
    await expect(exportOwnData(student, {}, { now })).rejects.toMatchObject({ code: 'NOT_FOUND' });
  });

  it('leave the address free for a new account', async () => {
    expect(await suite.db.user.count({ where: { emailNorm: 'student@school.example' } })).toBe(0);
  });
});

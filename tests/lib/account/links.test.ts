import { beforeAll, expect, it } from 'vitest';
import { systemCaller } from '@/lib/access/caller';
import {
  becomeFirstInstructor,
  firstLink,
  createFirstLink,
  getFirstLink,
  acceptFirstLink,
} from '@/lib/account/first-instructor';
import { hashPassword } from '@/lib/account/password';
import { createPasswordLinkByAddress, getPasswordLink, resetPassword } from '@/lib/account/password-links';
import { recogniseSession } from '@/lib/account/sessions';
import { signIn } from '@/lib/account/sign-in';
import { createMemberPasswordLink } from '@/lib/course/people';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { addCourse, addMember, addPerson, visitor } from '../../fixtures/people';

const tokenOf = (path: string) => path.split('/').at(-1)!;
const account = (email: string) => ({ name: 'The First', email, password: 'lanterns over water' });

describeOnBothDatabases('the first instructor’s link', (suite) => {
  const make = async () => tokenOf((await createFirstLink(systemCaller('test'), {}))!.path);

  it('is an address at the console, of which only a hash is kept', async () => {
    const link = await firstLink('https://type.school.example');
    expect(link!.address).toMatch(/^https:\/\/type\.school\.example\/first\/[A-Za-z0-9_-]{43}$/);
    expect(JSON.stringify(await suite.db.oneTimeLink.findMany())).not.toContain(tokenOf(link!.address));
  });

  it('stops working when a newer one is made, and after seven days', async () => {
    const [older, newer] = [await make(), await make()];
    await expect(getFirstLink(visitor(), { token: older })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    const { expiresAt } = await getFirstLink(visitor(), { token: newer });
    await expect(getFirstLink(visitor(), { token: newer }, { now: expiresAt })).rejects.toMatchObject({
      code: 'NOT_FOUND',
    });
  });

  it('lets exactly one in when several open it at once, and none is printed after that', async () => {
    const token = await make();
    const tries = await Promise.allSettled(
      Array.from({ length: 5 }, (_, n) =>
        becomeFirstInstructor(visitor(), { token, ...account(`first${n}@school.example`) }),
      ),
    );
    expect(tries.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
    for (const refused of tries)
      if (refused.status === 'rejected') expect(refused.reason).toMatchObject({ code: 'EXPIRED' });
    expect(await suite.db.user.count({ where: { mayCreateCourses: true } })).toBe(1);
    expect(await firstLink('https://type.school.example')).toBeNull();
  });

  it('can be taken up by somebody who has an account; a taken address leaves the link good', async () => {
    await suite.db.user.updateMany({ data: { mayCreateCourses: false } });
    const person = await addPerson(suite.db);
    const token = await make();
    await expect(becomeFirstInstructor(visitor(), { token, ...account(person.email) })).rejects.toMatchObject({
      code: 'INVALID',
      fields: { email: expect.stringContaining('sign in') },
    });
    await acceptFirstLink(person.caller, { token });
    expect((await suite.db.user.findUniqueOrThrow({ where: { id: person.id } })).mayCreateCourses).toBe(true);
  });
});

describeOnBothDatabases('a link for a new password', (suite) => {
  let passwordHash: string;
  beforeAll(async () => {
    passwordHash = await hashPassword('paper boats in rain');
  });

  async function classOf() {
    const [instructor, student] = [await addPerson(suite.db), await addPerson(suite.db, { passwordHash })];
    const courseId = await addCourse(suite.db);
    const instructorMember = await addMember(suite.db, courseId, instructor.id, 'instructor');
    const memberId = await addMember(suite.db, courseId, student.id, 'student');
    return { instructor, student, courseId, memberId, instructorMember };
  }

  it('is handed over by an instructor, works once, ends all sessions, and is written down', async () => {
    const { instructor, student, courseId, memberId } = await classOf();
    const { sessionToken } = await signIn(visitor(), { email: student.email, password: 'paper boats in rain' });
    const token = tokenOf((await createMemberPasswordLink(instructor.caller, { courseId, memberId })).path);
    expect(await getPasswordLink(visitor(), { token })).toMatchObject({ email: student.email });
    const tries = await Promise.allSettled(
      Array.from({ length: 4 }, () => resetPassword(visitor(), { token, newPassword: 'kites above the mole' })),
    );
    expect(tries.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
    expect(await recogniseSession(systemCaller('test'), { sessionToken })).toBeNull();
    await signIn(visitor(), { email: student.email, password: 'kites above the mole' });
    expect(
      await suite.db.auditEvent.count({
        where: { courseId, verb: 'password link handed over', subject: `member:${memberId}`, actorId: instructor.id },
      }),
    ).toBe(1);
  });

  it('stops working when a newer one is made, and after a day', async () => {
    const { instructor, courseId, memberId } = await classOf();
    const make = async () => createMemberPasswordLink(instructor.caller, { courseId, memberId });
    const [older, newer] = [await make(), await make()];
    await expect(
      resetPassword(visitor(), { token: tokenOf(older.path), newPassword: 'kites above the mole' }),
    ).rejects.toMatchObject({ code: 'EXPIRED' });
    await expect(
      resetPassword(
        visitor(),
        { token: tokenOf(newer.path), newPassword: 'kites above the mole' },
        { now: newer.expiresAt },
      ),
    ).rejects.toMatchObject({ code: 'EXPIRED' });
  });

  it('is never made for somebody who teaches anywhere or may open courses', async () => {
    const { instructor, student, courseId, memberId, instructorMember } = await classOf();
    await suite.db.user.update({ where: { id: student.id }, data: { mayCreateCourses: true } });
    await expect(createMemberPasswordLink(instructor.caller, { courseId, memberId })).rejects.toMatchObject({
      code: 'CONFLICT',
    });
    await suite.db.user.update({ where: { id: student.id }, data: { mayCreateCourses: false } });
    await addMember(suite.db, await addCourse(suite.db, 'Elsewhere'), student.id, 'instructor');
    await expect(createMemberPasswordLink(instructor.caller, { courseId, memberId })).rejects.toMatchObject({
      code: 'CONFLICT',
    });
    await expect(
      createMemberPasswordLink(instructor.caller, { courseId, memberId: instructorMember }),
    ).rejects.toMatchObject({
      code: 'CONFLICT',
    });
  });

  it('is made at the console for anybody, those who teach too', async () => {
    const { instructor } = await classOf();
    const { path, name } = await createPasswordLinkByAddress(systemCaller('test'), {
      email: instructor.email.toUpperCase(),
    });
    expect(name).toBe('Somebody');
    await resetPassword(visitor(), { token: tokenOf(path), newPassword: 'kites above the mole' });
    await signIn(visitor(), { email: instructor.email, password: 'kites above the mole' });
    await expect(
      createPasswordLinkByAddress(systemCaller('test'), { email: 'nobody@school.example' }),
    ).rejects.toMatchObject({ code: 'NOT_FOUND', userMessage: expect.stringContaining('nobody@school.example') });
  });

  it('says nothing of itself when it is not there', async () => {
    await expect(getPasswordLink(visitor(), { token: 'x'.repeat(43) })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await expect(getPasswordLink(visitor(), { token: 'short' })).rejects.toMatchObject({ code: 'INVALID' });
  });
});

import { beforeEach, expect, it } from 'vitest';
import { changePassword } from '@/lib/account/account';
import { hashPassword } from '@/lib/account/password';
import { getPasswordLink } from '@/lib/account/password-links';
import { resetPassword } from '@/lib/account/password-links';
import { createMemberPasswordLink } from '@/lib/course/people';
import { joinCourse } from '@/lib/course/join';
import { joinWithNewAccount } from '@/lib/course/join';
import { createJoinLink } from '@/lib/course/join';
import { importRoster } from '@/lib/course/roster';
import { describeOnBothDatabases } from '../fixtures/databases';
import { addCourse, addMember, addPerson, visitor } from '../fixtures/people';

const tokenOf = (address: string) => address.split('/').at(-1)!;

/**
 * A person holds an account with an address that is not theirs, or a link from before, and waits for a role to be given
 * to it.
 */
describeOnBothDatabases('an address that nobody has proven', (suite) => {
  let courseA: string, courseB: string;
  let boss: Awaited<ReturnType<typeof addPerson>>, hostile: Awaited<ReturnType<typeof addPerson>>;
  beforeEach(async () => {
    [boss, hostile] = [await addPerson(suite.db), await addPerson(suite.db)];
    [courseA, courseB] = [await addCourse(suite.db, 'A'), await addCourse(suite.db, 'B')];
    await addMember(suite.db, courseA, boss.id, 'instructor');
    await addMember(suite.db, courseB, hostile.id, 'instructor');
  });
  const victim = () => `${crypto.randomUUID()}@quayrow.example`;
  const bring = (who: typeof boss, courseId: string, email: string, role: string) =>
    importRoster(who.caller, {
      courseId,
      text: `name,email,role\nVictim,${email},${role}`,
      columns: [],
      makeSections: false,
    });
  const roles = (email: string, courseId: string) =>
    suite.db.member.findMany({ where: { courseId, user: { emailNorm: email } }, select: { role: true } });

  it.each(['student', 'assistant'])('gets no role as %s from a later roster, whoever registered it', async (role) => {
    const email = victim();
    const { path } = await createJoinLink(hostile.caller, {
      courseId: courseB,
      role: 'student',
      sectionId: null,
      days: 1,
    });
    await joinWithNewAccount(visitor(), {
      token: tokenOf(path),
      name: 'Victim',
      email,
      password: 'kites above the mole',
    });
    const { counts, invitations } = await bring(boss, courseA, email, role);
    expect(counts).toMatchObject({ newPeople: 0, invited: 1 });
    expect(invitations).toEqual([{ name: 'Victim', email, address: expect.stringContaining('/join/') }]);
    expect(await roles(email, courseA)).toEqual([]);
  });

  it('gets none where another instructor made the account and keeps its link', async () => {
    const email = victim();
    const { links } = await bring(hostile, courseB, email, 'student');
    await resetPassword(visitor(), { token: tokenOf(links[0]!.address), newPassword: 'kites above the mole' });
    await bring(boss, courseA, email, 'assistant');
    expect(await roles(email, courseA)).toEqual([]);
  });

  it('comes in by accepting, with the role and section of the roster, once', async () => {
    const person = await addPerson(suite.db);
    const { invitations } = await importRoster(boss.caller, {
      courseId: courseA,
      text: `name,email,role,section\nSomebody,${person.email},assistant,Monday`,
      columns: [],
      makeSections: true,
    });
    for (const _ of [1, 2]) await joinCourse(person.caller, { token: tokenOf(invitations[0]!.address) });
    expect(await suite.db.member.findMany({ where: { userId: person.id }, include: { section: true } })).toMatchObject([
      { courseId: courseA, role: 'assistant', section: { name: 'Monday' } },
    ]);
  });
});

describeOnBothDatabases('a link for a new password that was kept', (suite) => {
  const heldLink = async () => {
    const [instructor, student] = [
      await addPerson(suite.db),
      await addPerson(suite.db, { passwordHash: await hashPassword('paper boats in rain') }),
    ];
    const courseId = await addCourse(suite.db);
    await addMember(suite.db, courseId, instructor.id, 'instructor');
    const memberId = await addMember(suite.db, courseId, student.id, 'student');
    const { path } = await createMemberPasswordLink(instructor.caller, { courseId, memberId });
    return { student, token: tokenOf(path) };
  };
  const isOver = (token: string) =>
    expect(getPasswordLink(visitor(), { token })).rejects.toMatchObject({ code: 'NOT_FOUND' });

  it('is over once the person has joined a course of somebody else', async () => {
    const { student, token } = await heldLink();
    const other = await addPerson(suite.db);
    const courseId = await addCourse(suite.db, 'Elsewhere');
    await addMember(suite.db, courseId, other.id, 'instructor');
    const { path } = await createJoinLink(other.caller, { courseId, role: 'assistant', sectionId: null, days: 1 });
    await joinCourse(student.caller, { token: tokenOf(path) });
    await isOver(token);
  });

  it('is over once the person has changed their password', async () => {
    const { student, token } = await heldLink();
    await changePassword(student.caller, {
      currentPassword: 'paper boats in rain',
      newPassword: 'kites above the mole',
    });
    await isOver(token);
  });
});

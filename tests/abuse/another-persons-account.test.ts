import { beforeEach, expect, it } from 'vitest';
import { systemCaller } from '@/lib/access/caller';
import { createPasswordLinkByAddress } from '@/lib/account/password-links';
import { allowCourseMaking, createMemberPasswordLink, getMember } from '@/lib/course/people';
import { describeOnBothDatabases } from '../fixtures/databases';
import { addCourse, addMember, addPerson } from '../fixtures/people';

/** An instructor of one course tries to act as a member of another. */
describeOnBothDatabases('an instructor of course B', (suite) => {
  let courseA: string, courseB: string;
  let boss: Awaited<ReturnType<typeof addPerson>>, hostile: Awaited<ReturnType<typeof addPerson>>;
  beforeEach(async () => {
    [boss, hostile] = [await addPerson(suite.db), await addPerson(suite.db, { name: 'Hostile' })];
    [courseA, courseB] = [await addCourse(suite.db, 'A'), await addCourse(suite.db, 'B')];
    await addMember(suite.db, courseA, boss.id, 'instructor');
    await addMember(suite.db, courseB, hostile.id, 'instructor');
  });
  const inBoth = async (role: 'assistant' | 'student') => {
    const victim = await addPerson(suite.db, { name: 'Victim' });
    const there = await addMember(suite.db, courseA, victim.id, role);
    return { victim, there, memberId: await addMember(suite.db, courseB, victim.id, 'student') };
  };

  it.each(['assistant', 'student'] as const)('gets no password link for an %s of course A', async (role) => {
    const { victim, memberId } = await inBoth(role);
    await expect(createMemberPasswordLink(hostile.caller, { courseId: courseB, memberId })).rejects.toMatchObject({
      code: 'CONFLICT',
      userMessage: expect.stringContaining('a course that you do not run'),
    });
    expect(await suite.db.oneTimeLink.count({ where: { userId: victim.id } })).toBe(0);
    expect(await getMember(hostile.caller, { courseId: courseB, memberId })).toMatchObject({
      passwordLink: 'elsewhere',
    });
  });

  it('gets none either where the person was removed from course A, who can be put back', async () => {
    const { there, memberId } = await inBoth('student');
    await suite.db.member.update({ where: { id: there }, data: { removedAt: new Date() } });
    await expect(createMemberPasswordLink(hostile.caller, { courseId: courseB, memberId })).rejects.toThrow();
  });

  it('gets none in a course A where they only assist', async () => {
    const { memberId } = await inBoth('student');
    await addMember(suite.db, courseA, hostile.id, 'assistant');
    await expect(createMemberPasswordLink(hostile.caller, { courseId: courseB, memberId })).rejects.toThrow();
  });

  it('gets one where both courses are theirs, and it stands in the log of both', async () => {
    const { victim, memberId } = await inBoth('student');
    await addMember(suite.db, courseA, hostile.id, 'instructor');
    await createMemberPasswordLink(hostile.caller, { courseId: courseB, memberId });
    expect(await acts(victim.id, 'password link handed over')).toEqual([courseA, courseB].sort());
  });

  it('leaves a trace in every course of the person, whoever acts', async () => {
    const { victim, memberId } = await inBoth('student');
    await createPasswordLinkByAddress(systemCaller('test'), { email: victim.email });
    expect(await acts(victim.id, 'password link handed over')).toEqual([courseA, courseB].sort());
    await suite.db.user.update({ where: { id: hostile.id }, data: { mayCreateCourses: true } });
    await suite.db.member.update({ where: { id: memberId }, data: { role: 'instructor' } });
    await allowCourseMaking(hostile.caller, { courseId: courseB, memberId, allowed: true });
    expect(await acts(victim.id, 'course making allowed')).toEqual([courseA, courseB].sort());
  });

  /** The courses whose log has an act on this person. */
  async function acts(userId: string, verb: string): Promise<(string | null)[]> {
    const members = await suite.db.member.findMany({ where: { userId } });
    const found = await suite.db.auditEvent.findMany({
      where: { verb, subject: { in: members.map(({ id }) => `member:${id}`) } },
    });
    return found.map(({ courseId }) => courseId).sort();
  }
});

import { expect, it } from 'vitest';
import { eraseAccount } from '@/lib/account/erase';
import { changeRole, restoreMember, removeMember } from '@/lib/course/members';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { addCourse, addMember, addPerson } from '../../fixtures/people';

const rounds = 12;

describeOnBothDatabases('a course keeps an instructor', (suite) => {
  async function twoInstructors() {
    const courseId = await addCourse(suite.db);
    const [one, other] = [await addPerson(suite.db), await addPerson(suite.db)];
    return {
      courseId,
      one,
      other,
      oneMember: await addMember(suite.db, courseId, one.id, 'instructor'),
      otherMember: await addMember(suite.db, courseId, other.id, 'instructor'),
    };
  }

  const teaching = (courseId: string) =>
    suite.db.member.count({ where: { courseId, role: 'instructor', removedAt: null, userId: { not: null } } });

  it('alone, neither steps down nor leaves nor is erased', async () => {
    const courseId = await addCourse(suite.db, 'Only mine');
    const person = await addPerson(suite.db);
    const memberId = await addMember(suite.db, courseId, person.id, 'instructor');
    await expect(changeRole(person.caller, { courseId, memberId, role: 'student' })).rejects.toMatchObject({
      code: 'CONFLICT',
    });
    await expect(removeMember(person.caller, { courseId, memberId })).rejects.toMatchObject({ code: 'CONFLICT' });
    await expect(eraseAccount(person.caller, { email: person.email, password: '' })).rejects.toMatchObject({
      code: 'CONFLICT',
      userMessage: expect.stringContaining('“Only mine”'),
    });
    expect(await teaching(courseId)).toBe(1);
  });

  it('when two take each other out at the same moment, one of them stays', async () => {
    for (let round = 0; round < rounds; round += 1) {
      const { courseId, one, other, oneMember, otherMember } = await twoInstructors();
      const acts = [
        () => changeRole(one.caller, { courseId, memberId: otherMember, role: 'assistant' }),
        () => removeMember(other.caller, { courseId, memberId: oneMember }),
      ];
      const done = await Promise.allSettled((round % 2 ? acts : acts.toReversed()).map((act) => act()));
      expect(done.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
      expect(await teaching(courseId)).toBe(1);
    }
  });

  it('when both leave at the same moment, one of them stays', async () => {
    for (let round = 0; round < rounds; round += 1) {
      const { courseId, one, other, oneMember, otherMember } = await twoInstructors();
      await Promise.allSettled([
        round % 2
          ? eraseAccount(one.caller, { email: one.email, password: '' })
          : removeMember(one.caller, { courseId, memberId: oneMember }),
        removeMember(other.caller, { courseId, memberId: otherMember }),
      ]);
      expect(await teaching(courseId)).toBe(1);
    }
  });

  it('a removal is undone with everything as it was, and written down both times', async () => {
    const { courseId, one, otherMember } = await twoInstructors();
    await removeMember(one.caller, { courseId, memberId: otherMember });
    await removeMember(one.caller, { courseId, memberId: otherMember });
    await restoreMember(one.caller, { courseId, memberId: otherMember });
    expect(await teaching(courseId)).toBe(2);
    const acts = await suite.db.auditEvent.findMany({ where: { courseId }, orderBy: { id: 'asc' } });
    expect(acts.map(({ verb }) => verb)).toEqual(['member removed', 'member put back']);
    expect(acts.map(({ actorId }) => actorId)).toEqual([one.id, one.id]);
  });
});

import { beforeAll, expect, it } from 'vitest';
import { systemCaller, type Caller } from '@/lib/access/caller';
import { recogniseSession } from '@/lib/account/sessions';
import {
  joinCourse,
  joinWithNewAccount,
  listJoinLinks,
  createJoinLink,
  getJoinLink,
  revokeJoinLink,
} from '@/lib/course/join';
import { removeMember } from '@/lib/course/members';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { addCourse, addMember, addPerson, visitor } from '../../fixtures/people';

const tokenOf = (path: string) => path.split('/').at(-1)!;
const newcomer = (email: string) => ({ name: 'New Comer', email, password: 'lanterns over water' });

describeOnBothDatabases('join links', (suite) => {
  let courseId: string;
  let instructor: Caller;
  let section: string;
  beforeAll(async () => {
    courseId = await addCourse(suite.db);
    const person = await addPerson(suite.db);
    instructor = person.caller;
    await addMember(suite.db, courseId, person.id, 'instructor');
    section = (
      await suite.db.section.create({ data: { id: 'section-1', courseId, name: 'Monday', createdAt: new Date() } })
    ).id;
  });

  const link = (more: object = {}) =>
    createJoinLink(instructor, { courseId, role: 'student', sectionId: null, days: 14, ...more });

  it('brings a new person in with the role and the section of the link, signed in, and keeps only its hash', async () => {
    const { path } = await link({ role: 'assistant', sectionId: section });
    expect(await getJoinLink(visitor(), { token: tokenOf(path) })).toMatchObject({
      title: 'Display type',
      role: 'assistant',
      section: 'Monday',
    });
    const joined = await joinWithNewAccount(visitor(), { token: tokenOf(path), ...newcomer('a@school.example') });
    const known = await recogniseSession(systemCaller('test'), joined);
    const member = await suite.db.member.findFirstOrThrow({ where: { courseId, userId: known!.userId } });
    expect(member).toMatchObject({ role: 'assistant', sectionId: section, removedAt: null });
    expect(
      await suite.db.auditEvent.count({
        where: { verb: 'member joined', subject: `member:${member.id}`, actorId: known!.userId },
      }),
    ).toBe(1);
    expect(JSON.stringify(await suite.db.joinLink.findMany())).not.toContain(tokenOf(path));
  });

  it('makes one member of a person, however often they press', async () => {
    const person = await addPerson(suite.db);
    const token = tokenOf((await link()).path);
    const joined = await Promise.all(Array.from({ length: 8 }, () => joinCourse(person.caller, { token })));
    expect(new Set(joined.map((one) => one.courseId))).toEqual(new Set([courseId]));
    expect(await suite.db.member.count({ where: { courseId, userId: person.id } })).toBe(1);
  });

  it('makes one account of an address, however many browsers send it', async () => {
    const token = tokenOf((await link()).path);
    const sent = await Promise.allSettled(
      Array.from({ length: 5 }, () => joinWithNewAccount(visitor(), { token, ...newcomer('twice@school.example') })),
    );
    expect(sent.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
    for (const refused of sent)
      if (refused.status === 'rejected')
        expect(refused.reason).toMatchObject({
          code: 'INVALID',
          fields: { email: expect.stringContaining('sign in') },
        });
    expect(await suite.db.user.count({ where: { emailNorm: 'twice@school.example' } })).toBe(1);
    expect(await suite.db.member.count({ where: { courseId, user: { emailNorm: 'twice@school.example' } } })).toBe(1);
  });

  it('changes nobody’s role, and does not let in again whoever was removed', async () => {
    const person = await addPerson(suite.db);
    const memberId = await addMember(suite.db, courseId, person.id, 'student');
    const token = tokenOf((await link({ role: 'instructor' })).path);
    await joinCourse(person.caller, { token });
    expect((await suite.db.member.findUniqueOrThrow({ where: { id: memberId } })).role).toBe('student');
    await removeMember(instructor, { courseId, memberId });
    await expect(joinCourse(person.caller, { token })).rejects.toMatchObject({ code: 'CONFLICT' });
  });

  it('works until it runs out or is taken back', async () => {
    const person = await addPerson(suite.db);
    const { path, expiresAt } = await link({ days: 1 });
    await expect(joinCourse(person.caller, { token: tokenOf(path) }, { now: expiresAt })).rejects.toMatchObject({
      code: 'EXPIRED',
    });
    await expect(getJoinLink(visitor(), { token: tokenOf(path) }, { now: expiresAt })).rejects.toMatchObject({
      code: 'NOT_FOUND',
    });
    const [next] = await listJoinLinks(instructor, { courseId });
    await revokeJoinLink(instructor, { courseId, joinLinkId: next!.id });
    await expect(joinCourse(person.caller, { token: tokenOf(path) })).rejects.toMatchObject({ code: 'EXPIRED' });
    await expect(
      joinWithNewAccount(visitor(), { token: tokenOf(path), ...newcomer('late@school.example') }),
    ).rejects.toMatchObject({ code: 'EXPIRED' });
  });

  it('for those who teach it does not last as long', async () => {
    await expect(link({ role: 'assistant', days: 15 })).rejects.toMatchObject({
      code: 'INVALID',
      fields: { days: expect.stringContaining('given: 15') },
    });
  });

  it('never leads into a section of another course', async () => {
    const elsewhere = await addCourse(suite.db, 'Elsewhere');
    const foreign = await suite.db.section.create({
      data: { id: 'section-2', courseId: elsewhere, name: 'Theirs', createdAt: new Date() },
    });
    await expect(link({ sectionId: foreign.id })).rejects.toMatchObject({ code: 'NOT_FOUND' });
  });
});

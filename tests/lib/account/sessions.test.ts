import { beforeAll, expect, it } from 'vitest';
import { systemCaller, type Caller } from '@/lib/access/caller';
import { changePassword, getAccount } from '@/lib/account/account';
import { endSession, recogniseSession, signOut, signOutEverywhere } from '@/lib/account/sessions';
import { hashPassword } from '@/lib/account/password';
import { signIn } from '@/lib/account/sign-in';
import { removeMember } from '@/lib/course/members';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { addCourse, addMember, addPerson, visitor } from '../../fixtures/people';

const password = 'paper boats in rain';
const minute = 60_000;

describeOnBothDatabases('sessions', (suite) => {
  let passwordHash: string;
  beforeAll(async () => {
    passwordHash = await hashPassword(password);
  });

  const recognise = (sessionToken: string, now = new Date()) =>
    recogniseSession(systemCaller('test'), { sessionToken }, { now });

  /** A person with so many signed-in browsers. */
  async function signedIn(browsers: number) {
    const person = await addPerson(suite.db, { passwordHash });
    const tokens: string[] = [];
    const callers: Caller[] = [];
    for (let browser = 0; browser < browsers; browser += 1) {
      const { sessionToken } = await signIn(visitor(), { email: person.email, password });
      tokens.push(sessionToken);
      callers.push({ kind: 'person', ...(await recognise(sessionToken))!, address: '192.0.2.1' });
    }
    return { ...person, tokens, callers };
  }

  const alive = async (tokens: readonly string[]) =>
    (await Promise.all(tokens.map((token) => recognise(token)))).map((known) => known !== null);

  it('knows whose a session is, and nothing of one that was made up', async () => {
    const person = await signedIn(1);
    expect(await recognise(person.tokens[0]!)).toMatchObject({ userId: person.id });
    expect(await recognise('m'.repeat(43))).toBeNull();
  });

  it('ends after fourteen days, to the millisecond', async () => {
    const {
      tokens: [token],
    } = await signedIn(1);
    const { expiresAt, createdAt } = await suite.db.authSession.findFirstOrThrow({ orderBy: { createdAt: 'desc' } });
    expect(expiresAt.getTime() - createdAt.getTime()).toBe(14 * 24 * 60 * minute);
    expect(await recognise(token!, new Date(expiresAt.getTime() - 1))).not.toBeNull();
    expect(await recognise(token!, expiresAt)).toBeNull();
  });

  it('signing out ends this browser alone; signing out everywhere ends all', async () => {
    const person = await signedIn(3);
    await signOut(person.callers[0]!, {});
    expect(await alive(person.tokens)).toEqual([false, true, true]);
    expect(await signOutEverywhere(person.callers[1]!, {})).toEqual({ ended: 2 });
    expect(await alive(person.tokens)).toEqual([false, false, false]);
  });

  it('another browser can be signed out from here, somebody else’s cannot', async () => {
    const [person, other] = [await signedIn(2), await signedIn(1)];
    const { sessions } = await getAccount(person.callers[0]!, {});
    expect(sessions.map(({ thisOne }) => thisOne).filter(Boolean)).toHaveLength(1);
    await endSession(person.callers[0]!, { sessionId: sessions.find(({ thisOne }) => !thisOne)!.id });
    expect(await alive(person.tokens)).toEqual([true, false]);
    const theirs = other.callers[0]!;
    await expect(
      endSession(person.callers[0]!, { sessionId: theirs.kind === 'person' ? theirs.sessionId : '' }),
    ).rejects.toMatchObject({ code: 'NOT_FOUND' });
    expect(await alive(other.tokens)).toEqual([true]);
  });

  it('a new password ends all sessions and opens one', async () => {
    const person = await signedIn(2);
    await expect(
      changePassword(person.callers[0]!, { currentPassword: 'not this one', newPassword: 'kites above the mole' }),
    ).rejects.toMatchObject({ code: 'INVALID' });
    expect(await alive(person.tokens)).toEqual([true, true]);
    const { sessionToken } = await changePassword(person.callers[0]!, {
      currentPassword: password,
      newPassword: 'kites above the mole',
    });
    expect(await alive([...person.tokens, sessionToken])).toEqual([false, false, true]);
    await expect(signIn(visitor(), { email: person.email, password })).rejects.toMatchObject({ code: 'INVALID' });
    await signIn(visitor(), { email: person.email, password: 'kites above the mole' });
  });

  it('being removed from a course ends them', async () => {
    const [student, instructor] = [await signedIn(2), await addPerson(suite.db)];
    const courseId = await addCourse(suite.db);
    await addMember(suite.db, courseId, instructor.id, 'instructor');
    const memberId = await addMember(suite.db, courseId, student.id, 'student');
    await removeMember(instructor.caller, { courseId, memberId });
    expect(await alive(student.tokens)).toEqual([false, false]);
  });

  it('being seen is written down at most every five minutes', async () => {
    const {
      tokens: [token],
      id,
    } = await signedIn(1);
    const lastSeen = async () =>
      (await suite.db.authSession.findFirstOrThrow({ where: { userId: id } })).lastSeenAt.getTime();
    const begun = await lastSeen();
    await recognise(token!, new Date(begun + 4 * minute));
    expect(await lastSeen()).toBe(begun);
    await Promise.all(Array.from({ length: 5 }, () => recognise(token!, new Date(begun + 6 * minute))));
    expect(await lastSeen()).toBe(begun + 6 * minute);
  });
});

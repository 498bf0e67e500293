import { beforeAll, expect, it } from 'vitest';
import { GET as tooMany } from '@/app/too-many/route';
import { getPasswordLink, createPasswordLinkByAddress } from '@/lib/account/password-links';
import { hashPassword } from '@/lib/account/password';
import { signIn } from '@/lib/account/sign-in';
import { createJoinLink, getJoinLink } from '@/lib/course/join';
import { systemCaller } from '@/lib/access/caller';
import { describeOnBothDatabases } from '../fixtures/databases';
import { addCourse, addMember, addPerson, visitor } from '../fixtures/people';

const password = 'paper boats in rain';
const tokenOf = (path: string) => path.split('/').at(-1)!;

/** An attacker guesses another person's password, or makes many attempts so that others can't get in. */
describeOnBothDatabases('somebody who guesses', (suite) => {
  let passwordHash: string;
  beforeAll(async () => {
    passwordHash = await hashPassword(password);
  });
  const guess = (email: string, address: string) =>
    signIn(visitor(address), { email, password: 'not this one' }).catch((error: { code: string }) => error.code);

  it('does not lock the owner out from elsewhere', async () => {
    const { email } = await addPerson(suite.db, { passwordHash });
    for (let tries = 0; tries < 12; tries += 1) await guess(email, '203.0.113.5');
    expect(await guess(email, '203.0.113.5')).toBe('TOO_MANY');
    await signIn(visitor('198.51.100.20'), { email, password });
  });

  it('does not either from very many addresses, where the owner has signed in before', async () => {
    const { email } = await addPerson(suite.db, { passwordHash });
    await signIn(visitor('198.51.100.20'), { email, password });
    const codes: unknown[] = [];
    for (let host = 0; host < 110; host += 1) codes.push(await guess(email, `203.0.113.${host}`));
    expect(codes.at(-1)).toBe('TOO_MANY');
    await signIn(visitor('198.51.100.20'), { email, password });
  }, 120_000);

  it('does not keep a class of 120 behind the same address from its links', async () => {
    const [instructor, student] = [await addPerson(suite.db), await addPerson(suite.db)];
    const courseId = await addCourse(suite.db);
    await addMember(suite.db, courseId, instructor.id, 'instructor');
    const join = tokenOf(
      (await createJoinLink(instructor.caller, { courseId, role: 'student', sectionId: null, days: 7 })).path,
    );
    const reset = tokenOf((await createPasswordLinkByAddress(systemCaller('test'), { email: student.email })).path);
    const room = visitor('198.51.100.99');
    for (let opened = 0; opened < 130; opened += 1) {
      await getJoinLink(room, { token: join });
      await getPasswordLink(room, { token: reset });
    }
    const made = (tries: number) =>
      Promise.allSettled(Array.from({ length: tries }, () => getJoinLink(room, { token: 'x'.repeat(43) })));
    const codes = (await made(130)).map((one) =>
      one.status === 'rejected' ? (one.reason as { code: string }).code : 'open',
    );
    expect(codes.filter((code) => code === 'NOT_FOUND')).toHaveLength(120);
    expect(codes.filter((code) => code === 'TOO_MANY')).toHaveLength(10);
  }, 120_000);
});

it('is told so with 429, how long to wait, and words', async () => {
  const answer = tooMany(new Request('http://127.0.0.1/too-many?wait=240'));
  expect([answer.status, answer.headers.get('retry-after')]).toEqual([429, '240']);
  expect(await answer.text()).toContain('Wait 4 minutes');
  for (const wait of ['', '-1', 'x', '1e9', '<b>'])
    expect(await tooMany(new Request(`http://127.0.0.1/too-many?wait=${wait}`)).text()).toMatch(
      /Wait (a minute|60 minutes),/,
    );
});

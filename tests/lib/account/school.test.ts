import { beforeAll, expect, it } from 'vitest';
import { systemCaller } from '@/lib/access/caller';
import { hashPassword } from '@/lib/account/password';
import { recogniseSession } from '@/lib/account/sessions';
import { signIn } from '@/lib/account/sign-in';
import { signInThroughSchool } from '@/lib/account/sign-in-through-school';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { addPerson, visitor } from '../../fixtures/people';

const issuer = 'https://id.school.example';
const claims = (subject: string, email: string | null, more: object = {}) => ({
  issuer,
  subject,
  email,
  emailVerified: true,
  name: 'Ines Calloway',
  ...more,
});

describeOnBothDatabases('sign-in through the school', (suite) => {
  let passwordHash: string;
  beforeAll(async () => {
    passwordHash = await hashPassword('paper boats in rain');
  });

  const through = (given: object) => signInThroughSchool(systemCaller('test'), given);
  const whose = async ({ sessionToken }: { sessionToken: string }) =>
    (await recogniseSession(systemCaller('test'), { sessionToken }))!.userId;

  it('makes one account, however many browsers come at once, and knows it again by subject', async () => {
    const opened = await Promise.all(Array.from({ length: 6 }, () => through(claims('s-1', 'ines@school.example'))));
    const people = new Set(await Promise.all(opened.map(whose)));
    expect(people.size).toBe(1);
    expect(await suite.db.user.count({ where: { emailNorm: 'ines@school.example' } })).toBe(1);
    expect(await whose(await through(claims('s-1', 'ines.married@school.example')))).toBe([...people][0]);
  });

  it('ties itself to an account with the same verified address, whose password and sessions end', async () => {
    const person = await addPerson(suite.db, { passwordHash });
    const before = await signIn(visitor(), { email: person.email, password: 'paper boats in rain' });
    expect(await whose(await through(claims('s-2', person.email.toUpperCase())))).toBe(person.id);
    expect(await recogniseSession(systemCaller('test'), before)).toBeNull();
    await expect(signIn(visitor(), { email: person.email, password: 'paper boats in rain' })).rejects.toMatchObject({
      code: 'INVALID',
    });
  });

  it.each([
    ['not verified', { emailVerified: false }],
    ['without an address', { email: null }],
  ])('ties nothing to an address that is %s', async (_, more) => {
    const person = await addPerson(suite.db, { passwordHash });
    await expect(through(claims(`s-${person.id}`, person.email, more))).rejects.toMatchObject({ code: 'INVALID' });
    expect(await suite.db.identity.count({ where: { userId: person.id } })).toBe(0);
    await signIn(visitor(), { email: person.email, password: 'paper boats in rain' });
  });

  it('tells subjects of two issuers apart', async () => {
    const one = await whose(await through(claims('same', 'one@school.example')));
    const other = await whose(
      await through({ ...claims('same', 'other@school.example'), issuer: 'https://id.elsewhere.example' }),
    );
    expect(one).not.toBe(other);
  });
});

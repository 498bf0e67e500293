import { beforeAll, expect, it } from 'vitest';
import { AppError } from '@/lib/access/errors';
import { hashPassword } from '@/lib/account/password';
import { signIn } from '@/lib/account/sign-in';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { addPerson, visitor } from '../../fixtures/people';

const password = 'paper boats in rain';

describeOnBothDatabases('sign-in', (suite) => {
  let passwordHash: string;
  beforeAll(async () => {
    passwordHash = await hashPassword(password);
  });
  const someone = () => addPerson(suite.db, { passwordHash });

  const refusal = async (input: unknown, address?: string) => {
    const error = await signIn(visitor(address), input).catch((refused: unknown) => refused);
    expect(error).toBeInstanceOf(AppError);
    return error as AppError;
  };

  it('opens a session whose secret is not stored', async () => {
    const person = await someone();
    const { sessionToken } = await signIn(visitor(), { email: ` ${person.email.toUpperCase()}`, password });
    const rows = await suite.db.authSession.findMany({ where: { userId: person.id } });
    expect(rows).toHaveLength(1);
    expect(JSON.stringify(rows)).not.toContain(sessionToken);
  });

  it('says the same of a wrong password, an unknown address and an account without a password', async () => {
    const person = await someone();
    const without = await addPerson(suite.db);
    const answers = [
      await refusal({ email: person.email, password: 'not this one' }),
      await refusal({ email: 'nobody@school.example', password }),
      await refusal({ email: without.email, password }),
    ].map(({ code, userMessage, fields }) => JSON.stringify({ code, userMessage, fields }));
    expect(new Set(answers).size).toBe(1);
  });

  /** As if so much time had gone by that this wait is over. */
  const waitOver = (limit: string) => suite.db.rateLimit.deleteMany({ where: { key: { startsWith: `${limit}:` } } });

  it('makes whoever guesses wait longer and longer, the same for an unknown account', async () => {
    const person = await someone();
    for (const email of [person.email, `ghost-${person.email}`]) {
      const guess = async (times: number) => {
        for (let wrong = 0; wrong < times; wrong += 1)
          expect((await refusal({ email, password: `wrong ${wrong}` })).code).toBe('INVALID');
        return (await refusal({ email, password })).retryAfterSeconds!;
      };
      const first = await guess(4);
      expect(first).toBeGreaterThan(0);
      expect(first).toBeLessThanOrEqual(15);
      await waitOver('sign-in-seconds');
      await guess(4);
      await waitOver('sign-in-seconds');
      expect(await guess(0)).toBeGreaterThan(15);
      for (let more = 0; more < 2; more += 1) {
        for (const limit of ['sign-in-seconds', 'sign-in-minutes']) await waitOver(limit);
        await guess(4);
      }
      for (const limit of ['sign-in-seconds', 'sign-in-minutes']) await waitOver(limit);
      expect(await guess(0)).toBeGreaterThan(5 * 60);
    }
  });

  it('counts tries at the same moment one by one', async () => {
    const person = await someone();
    const answers = await Promise.all(
      Array.from({ length: 20 }, (_, wrong) => refusal({ email: person.email, password: `wrong ${wrong}` })),
    );
    expect(answers.filter(({ code }) => code === 'INVALID')).toHaveLength(4);
    expect(answers.filter(({ code }) => code === 'TOO_MANY')).toHaveLength(16);
  });

  it('forgets the wrong tries once the right password came', async () => {
    const person = await someone();
    for (let wrong = 0; wrong < 3; wrong += 1) await refusal({ email: person.email, password: 'not this one' });
    await signIn(visitor(), { email: person.email, password });
    for (let wrong = 0; wrong < 3; wrong += 1)
      expect((await refusal({ email: person.email, password: 'not this one' })).code).toBe('INVALID');
  });

  it('lets a whole class in from one address, and stops one that only guesses', async () => {
    const address = '198.51.100.77';
    const person = await someone();
    // 300 failures are the limit; what succeeds is given back.
    await suite.db.rateLimit.create({
      data: { key: `sign-in-address:${address}`, points: 299, expire: new Date(Date.now() + 60_000) },
    });
    for (let times = 0; times < 3; times += 1) await signIn(visitor(address), { email: person.email, password });
    expect((await refusal({ email: 'one@school.example', password }, address)).code).toBe('INVALID');
    expect((await refusal({ email: 'two@school.example', password }, address)).code).toBe('TOO_MANY');
    expect((await refusal({ email: person.email, password: 'not this one' }, '198.51.100.78')).code).toBe('INVALID');
  });

  it('never lets in somebody who was erased', async () => {
    const person = await someone();
    await suite.db.user.update({ where: { id: person.id }, data: { erasedAt: new Date() } });
    expect((await refusal({ email: person.email, password })).code).toBe('INVALID');
  });

  it('never repeats a password in what it says', async () => {
    const answer = await refusal({ email: 'x', password: 12345 });
    expect(JSON.stringify({ ...answer, userMessage: answer.userMessage })).not.toContain('12345');
  });
});

import { expect, test } from 'vitest';
import { hashPassword, passwordFits } from '@/lib/account/password';
import { hashToken, newToken } from '@/lib/account/token';

test('the stored string is argon2id with 19 MiB and two passes, salted anew each time', async () => {
  const [one, other] = await Promise.all([hashPassword('paper boats in rain'), hashPassword('paper boats in rain')]);
  expect(one).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$[A-Za-z0-9+/]{22,}\$[A-Za-z0-9+/]{43}$/);
  expect(other).not.toBe(one);
  expect(await passwordFits(one, 'paper boats in rain')).toBe(true);
  expect(await passwordFits(one, 'paper boats in Rain')).toBe(false);
});

// The argon2 reference implementation's own test (src/test.c, argon2id, t=2, m=2^16, p=1), from memory.
test('takes what the reference implementation made', async () => {
  const made = '$argon2id$v=19$m=65536,t=2,p=1$c29tZXNhbHQ$CTFhFdXPJO1aFaMaO6Mm5c8y7cJHAph8ArZWb2GRPPc';
  expect(await passwordFits(made, 'password')).toBe(true);
  expect(await passwordFits(made, 'Password')).toBe(false);
});

test('no password fits an account without one, and finding that out takes as long', async () => {
  const stored = await hashPassword('paper boats in rain');
  expect(await passwordFits(null, 'paper boats in rain')).toBe(false);
  const times = { known: [] as number[], unknown: [] as number[] };
  for (let round = 0; round < 9; round += 1) {
    times.known.push(await timeOf(() => passwordFits(stored, 'not this one')));
    times.unknown.push(await timeOf(() => passwordFits(undefined, 'not this one')));
  }
  const ratio = median(times.unknown) / median(times.known);
  expect(ratio).toBeGreaterThan(0.5);
  expect(ratio).toBeLessThan(2);
});

// FIPS 180-4, example for one block: SHA-256('abc').
test('a token is kept as its SHA-256', () => {
  expect(hashToken('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  expect(newToken()).toMatch(/^[A-Za-z0-9_-]{43}$/);
});

async function timeOf(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

const median = (values: number[]) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;

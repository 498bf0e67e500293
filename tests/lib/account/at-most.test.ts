import { expect, test } from 'vitest';
import { limitConcurrency } from '@/lib/account/password';

test('runs two at once, in the order they came, and refuses when the line is full', async () => {
  const inTurn = limitConcurrency({ running: 2, waiting: 2 });
  const started: string[] = [];
  const finish = new Map<string, () => void>();
  const task = (name: string) =>
    inTurn(
      () =>
        new Promise<string>((done) => {
          started.push(name);
          finish.set(name, () => done(name));
        }),
    );
  const [a, b, c, d] = [task('a'), task('b'), task('c'), task('d')];
  await expect(task('e')).rejects.toMatchObject({ code: 'UNAVAILABLE', retryAfterSeconds: 5 });
  expect(started).toEqual(['a', 'b']);
  finish.get('b')!();
  expect(await b).toBe('b');
  expect(started).toEqual(['a', 'b', 'c']);
  finish.get('a')!();
  await a;
  expect(started).toEqual(['a', 'b', 'c', 'd']);
  finish.get('c')!();
  finish.get('d')!();
  await Promise.all([c, d]);
});

test('a task that fails gives its place on', async () => {
  const inTurn = limitConcurrency({ running: 1, waiting: 5 });
  await expect(inTurn(() => Promise.reject(new Error('no')))).rejects.toThrow('no');
  expect(await inTurn(async () => 7)).toBe(7);
});

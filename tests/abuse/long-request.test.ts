import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { sqliteAdapter } from '@/lib/data/sqlite';
import { type LineFacts, type LineOfMember, summarise, summarising } from '@/shared/class/summary';

/** The longest that others waited for their turn while `work` ran, ms. */
async function longestWait(work: () => Promise<unknown>): Promise<number> {
  let last = performance.now();
  let longest = 0;
  const watch = setInterval(() => {
    longest = Math.max(longest, performance.now() - last);
    last = performance.now();
  }, 1);
  await work();
  await wait(20);
  clearInterval(watch);
  return longest;
}

function workFor(milliseconds: number): void {
  const end = performance.now() + milliseconds;
  while (performance.now() < end);
}

it.each(['one after the other', 'together'])(
  'lets others in between what one request asks of SQLite %s',
  async (how) => {
    const folder = mkdtempSync(path.join(tmpdir(), 'kerncrit-long-'));
    const connection = await sqliteAdapter(`file:${path.join(folder, 'long.db')}`).connect();
    try {
      const waited = await longestWait(async () => {
        const ask = async () => {
          await connection.queryRaw({ sql: 'SELECT 1', args: [], argTypes: [] });
          workFor(5);
        };
        if (how === 'together') await Promise.all(Array.from({ length: 100 }, ask));
        else for (let times = 0; times < 100; times += 1) await ask();
      });
      expect(waited).toBeLessThan(100);
    } finally {
      await connection.dispose();
      rmSync(folder, { recursive: true });
    }
  },
);

it('sums a class up in steps, and they come to the same', () => {
  const facts: LineFacts[] = Array.from({ length: 4 }, (_, line) => ({
    specimenVersionId: `v${line}`,
    specimenId: `s${line}`,
    text: 'HOHO',
    letters: ['H', 'O', 'H', 'O'],
    sides: [
      ['straight', 'round'],
      ['round', 'straight'],
      ['straight', 'round'],
    ],
  }));
  const lines: LineOfMember[] = Array.from({ length: 400 }, (_, place) => ({
    memberId: `m${place}`,
    specimenVersionId: `v${place % 4}`,
    tracking: 0,
    offsets: [place % 7, 0, 3],
    judged: {
      yardstick: 'reference',
      tightness: place % 5,
      pairs: [0, 1, 2].map((pair) => ({ rest: (place * (pair + 3)) % 23, within: (place + pair) % 3 > 0 })),
    },
  }));
  const work = summarising(facts, lines, 100);
  let steps = 0;
  let step = work.next();
  for (; !step.done; step = work.next()) steps += 1;
  // A step for each line, for each line's sides, and for each kind of side.
  expect(steps).toBe(4 + 4 + 2);
  expect(step.value).toEqual(summarise(facts, lines, 100));
  const [first] = step.value.sides;
  expect(step.value.sides.reduce((sum, { pairs }) => sum + pairs, 0)).toBe(1_200);
  expect(first!.outside / first!.pairs).toBeGreaterThan(0.3);
});

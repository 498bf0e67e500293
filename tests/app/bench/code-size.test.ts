import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { bundleBench } from '@/tests/e2e/bench/bundle';

test('the bench’s own code is at most 60 kB, and the numbers of the usual range come later', async () => {
  const { js, parts, later } = await bundleBench('app/_bench/workbench.tsx', false);
  const size = (texts: string[]) => texts.reduce((sum, text) => sum + gzipSync(text, { level: 9 }).length, 0);
  const now = [...parts].filter(([name]) => !later.has(name)).map(([, text]) => text);
  expect(size([js, ...now])).toBeLessThanOrEqual(60_000);
  expect(later.size).toBeGreaterThan(0);
}, 60_000);

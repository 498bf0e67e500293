import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { ENGINE } from '@/shared/measure';
import { canonical, engineCases } from '@/tests/fixtures/engine-cases';
import { outputsOf } from '@/tests/fixtures/engine-outputs';

const file = new URL(`../../fixtures/golden/engine-${ENGINE}.json`, import.meta.url);

/** Stored measurements name the engine they were made with, so an output may only change together with its version. */
it(`engine ${ENGINE} gives what it gave when it was numbered`, async () => {
  const now = canonical(outputsOf(await engineCases()));
  if (!existsSync(file) && process.env['NEW_ENGINE'] === '1') writeFileSync(file, now);
  expect(
    existsSync(file),
    'No golden file for this engine: when the change of outputs is meant, run this test once with NEW_ENGINE=1.',
  ).toBe(true);
  expect(
    now,
    'Outputs have changed: raise ENGINE in shared/measure/engine.ts and run this test once with NEW_ENGINE=1.',
  ).toBe(readFileSync(file, 'utf8'));
});

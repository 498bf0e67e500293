import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { expect, it } from 'vitest';
import { canonical, engineCases } from '@/tests/fixtures/engine-cases';
import { launchChromium } from '@/tests/fixtures/faces/chromium';

it('measures and compares to the last digit alike in Node and in Chromium', async () => {
  const root = fileURLToPath(new URL('../../../', import.meta.url));
  const bundle = await build({
    stdin: {
      contents: `import { outputsOf, canonical } from '@/tests/fixtures/engine-outputs'; globalThis.outputs = (cases) => canonical(outputsOf(cases));`,
      resolveDir: root,
    },
    bundle: true,
    write: false,
    format: 'iife',
    platform: 'browser',
    alias: { '@': root },
  });
  const cases = await engineCases();
  const { outputsOf } = await import('@/tests/fixtures/engine-outputs');
  const browser = await launchChromium();
  try {
    const page = await browser.newPage();
    await page.setContent('<!doctype html><title>Measure</title>');
    await page.addScriptTag({ content: bundle.outputFiles[0]!.text });
    const there = await page.evaluate(
      (given) => (globalThis as unknown as { outputs(cases: unknown): string }).outputs(given),
      cases as unknown,
    );
    expect(there).toBe(canonical(outputsOf(cases)));
    expect(there.length).toBeGreaterThan(10_000);
  } finally {
    await browser.close();
  }
});

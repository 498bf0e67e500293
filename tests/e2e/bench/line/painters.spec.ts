import { expect, test as base, type Page } from '@playwright/test';
import { lookTable } from '@/app/_line/looks';
import type { LookName } from '@/shared/line/looks';
import { bundleBench, type Bundle } from '../bundle';
import { packOf } from '../fixture';
import type { Shown } from './entry';

const test = base.extend<{ sheet: Page }, { drawing: Bundle }>({
  drawing: [async ({}, give) => give(await bundleBench('tests/e2e/bench/line/entry.tsx')), { scope: 'worker' }],
  sheet: async ({ page, drawing }, give) => {
    await page.setContent(
      '<!doctype html><html lang="en-GB"><body style="margin:0"><div id="main"></div></body></html>',
    );
    await page.addStyleTag({ content: drawing.css });
    await page.addScriptTag({ content: drawing.js, type: 'module' });
    await page.waitForFunction(() => 'show' in window);
    await give(page);
  },
});

/** At most so many pixels may differ by more than a smoothed edge: one in a thousand. */
const MOST = 0.001;

async function shown(pack: 'volta-yawl' | 'market-avenue', more: Partial<Shown> = {}): Promise<Shown> {
  const made = await packOf(pack);
  const offsets = made.builtIn.map((_, gap) => (gap % 3 === 1 ? -30 : gap % 3 === 2 ? 40 : 0));
  return { pack: made, spacing: { tracking: 10, offsets }, ground: 'light', em: 132, looks: {}, chosen: 2, ...more };
}

async function apart(page: Page, given: Shown): Promise<{ share: number; ink: number }> {
  await page.evaluate((one) => window.show(one), given);
  const png = async (id: string) =>
    (await page.locator(`#${id}`).screenshot({ animations: 'disabled' })).toString('base64');
  return page.evaluate(([one, other]) => window.different(one!, other!), [await png('svg'), await png('canvas')]);
}

const single = (Object.keys(lookTable) as LookName[]).map((look) => [look]);
const together: LookName[][] = [
  [],
  ['white', 'counters'],
  ['hidden', 'counters'],
  ['white', 'counters', 'guides', 'why'],
  ['three', 'head', 'white'],
  ['mirror', 'why', 'counters'],
  ['opposite', 'white', 'counters'],
  ['blur', 'white', 'guides'],
];

for (const names of [...single, ...together]) {
  test(`canvas and SVG lay the same ink: ${names.join(', ') || 'the letters alone'}`, async ({ sheet }) => {
    const looks = Object.fromEntries(names.map((name) => [name, true]));
    const found = await apart(sheet, await shown('volta-yawl', { looks }));
    expect(found.ink).toBeGreaterThan(0.02);
    expect(found.share).toBeLessThanOrEqual(MOST);
  });
}

test('white inside and between are the same in a long line, on dark', async ({ sheet }) => {
  const found = await apart(
    sheet,
    await shown('market-avenue', { em: 84, ground: 'dark', looks: { counters: true, white: true } }),
  );
  expect(found.share).toBeLessThanOrEqual(MOST);
});

test('overlays, wedges and ties are the same', async ({ sheet }) => {
  const given = await shown('volta-yawl', {
    marks: [
      { gap: 0, fault: 'tight', strength: 3 },
      { gap: 3, fault: 'wide', strength: 2 },
    ],
    ties: [
      { from: 1, to: 1, sign: '' },
      { from: 3, to: 5, sign: '' },
    ],
  });
  const under = { tracking: 0, offsets: given.spacing.offsets.map(() => 0) };
  expect((await apart(sheet, { ...given, under })).share).toBeLessThanOrEqual(MOST);
});

test('the comparison notices a look that is missing', async ({ sheet }) => {
  const given = await shown('volta-yawl');
  const png = async (id: string) => (await sheet.locator(`#${id}`).screenshot()).toString('base64');
  for (const look of ['white', 'counters', 'mirror', 'blur', 'guides', 'why', 'hidden', 'three', 'opposite'] as const) {
    await sheet.evaluate((one) => window.show(one), given);
    const plain = await png('svg');
    await sheet.evaluate((one) => window.show(one), { ...given, looks: { [look]: true } });
    const found = await sheet.evaluate(([one, other]) => window.different(one!, other!), [plain, await png('canvas')]);
    expect(found.share, look).toBeGreaterThan(MOST);
  }
});

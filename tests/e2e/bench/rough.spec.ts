import { expect, type Page } from '@playwright/test';
import { randomFrom } from '../../fixtures/random';
import { onPage, test } from './fixture';
import type { Manner } from './serve';

/**
 * A rough sitting: random edits while the server is silent, loses answers, signs the student out or works, and pages
 * are closed without notice. Run it longer, or again, with ROUGH_EDITS and ROUGH_SEED.
 */
const edits = Number(process.env.ROUGH_EDITS ?? 40);
const seed = Number(process.env.ROUGH_SEED ?? 20261124);

test(`a rough sitting of ${edits} edits loses nothing (seed ${seed})`, async ({ context, server, open }) => {
  test.setTimeout(60_000 + edits * 2_000);
  const next = randomFrom(seed);
  let page: Page = await context.newPage();
  await open(page);
  const expected = new Array<number>(8).fill(0);
  for (let edit = 0; edit < edits; edit += 1) {
    server.behave((['well', 'well', 'silent', 'answer lost', 'signed out'] as Manner[])[next(5)]!);
    const gap = next(8);
    await page.locator(`[data-gap="${gap}"]`).focus();
    const wider = next(2) === 0;
    await page.keyboard.press(wider ? 'ArrowRight' : 'PageDown');
    expected[gap]! += wider ? 5 : -20;
    if (next(3) === 0) await page.waitForTimeout(next(250));
    if (next(6) === 0) {
      await page.close();
      page = await context.newPage();
      await open(page);
      expect((await onPage(page)).offsets).toEqual(expected);
    }
  }
  server.behave('well');
  await page.evaluate(() => window.dispatchEvent(new Event('online')));
  await expect(page.getByText('All changes are saved.')).toBeVisible({ timeout: 30_000 });
  expect(server.toy().kept().document.offsets).toEqual(expected);
});

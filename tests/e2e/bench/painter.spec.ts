import { expect } from '@playwright/test';
import { onPage, placeOfGap, test } from './fixture';

const line = 'canvas[data-view=working]';

test('the page paints until the thread’s code has come, and the thread goes on from there, in the middle of a drag too', async ({
  page,
  open,
}) => {
  let come = () => {};
  const held = new Promise<void>((resolve) => {
    come = resolve;
  });
  await page.route('**/painter.worker.ts', async (route) => {
    await held;
    await route.continue();
  });
  await open();
  await expect(page.locator(line)).toHaveAttribute('data-drawn', 'page');
  const { x, y } = await placeOfGap(page, 3);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 30, y, { steps: 5 });
  await page.waitForTimeout(200);
  const before = await page.locator(line).screenshot();
  const offset = (await onPage(page)).offsets[3];
  expect(offset).toBeGreaterThan(0);
  come();
  await expect(page.locator(`${line}[data-drawn=thread]`)).toBeVisible();
  await expect(page.locator('canvas[data-left]')).toHaveCount(0);
  await expect(page.locator('canvas[data-drawn=page]')).toHaveCount(0);
  expect((await page.locator(line).screenshot()).equals(before)).toBe(true);
  await page.mouse.move(x + 60, y, { steps: 5 });
  await page.mouse.up();
  // Twice as far, each rounded.
  expect(Math.abs((await onPage(page)).offsets[3]! - 2 * offset!)).toBeLessThanOrEqual(1);
  expect((await page.locator(line).screenshot()).equals(before)).toBe(false);
});

test('where the thread does not start the page goes on painting', async ({ page, open }) => {
  await page.route('**/painter.worker.ts', (route) => route.abort());
  await open();
  const before = await page.locator(line).screenshot();
  await page.keyboard.press('Tab');
  for (let count = 0; count < 4; count += 1) await page.keyboard.press('PageUp');
  await expect(page.locator(line)).toHaveAttribute('data-drawn', 'page');
  expect((await page.locator(line).screenshot()).equals(before)).toBe(false);
  expect((await onPage(page)).offsets[0]).toBe(80);
});

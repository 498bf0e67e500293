import { expect } from '@playwright/test';
import { onPage, test } from './fixture';

const nudge = 'ArrowRight';

test('without an answer everything is kept, through a closed page too, and goes out when the server is back', async ({
  page,
  server,
  open,
  context,
}) => {
  await open();
  server.behave('silent');
  await page.keyboard.press('Tab');
  await page.keyboard.press(nudge);
  await expect(page.getByText(/No answer from the server\. Your changes are kept on this device/)).toBeVisible();
  await page.keyboard.press(nudge);
  await page.close();
  expect(server.toy().kept().version).toBe(0);
  const again = await context.newPage();
  await open(again);
  expect((await onPage(again)).offsets[0]).toBe(10);
  server.behave('well');
  await again.evaluate(() => window.dispatchEvent(new Event('online')));
  await expect(again.getByText('All changes are saved.')).toBeVisible({ timeout: 20_000 });
  expect(server.toy().kept().document.offsets[0]).toBe(10);
  // Undo reaches back through the reload.
  await again.getByRole('button', { name: 'Undo' }).click();
  expect((await onPage(again)).offsets[0]).toBe(5);
});

test('an answer that goes missing makes no second version and no conflict', async ({ page, server, open }) => {
  await open();
  server.behave('answer lost');
  await page.keyboard.press('Tab');
  await page.keyboard.press(nudge);
  await expect(page.getByText(/No answer from the server/)).toBeVisible();
  server.behave('well');
  await expect(page.getByText('All changes are saved.')).toBeVisible({ timeout: 20_000 });
  expect(server.toy().kept()).toMatchObject({ version: 1, document: { offsets: [5, 0, 0, 0, 0, 0, 0, 0] } });
});

test('an ended session says so, keeps everything, and goes on after signing in', async ({ page, server, open }) => {
  await open();
  server.behave('signed out');
  await page.keyboard.press('Tab');
  await page.keyboard.press(nudge);
  await expect(page.getByText(/Your session has ended\. Your changes are kept on this device/)).toBeVisible();
  await expect(page.getByRole('link', { name: 'Sign in again' })).toHaveAttribute('target', '_blank');
  await page.keyboard.press(nudge);
  server.behave('well');
  await page.evaluate(() => window.dispatchEvent(new Event('focus')));
  await expect(page.getByText('All changes are saved.')).toBeVisible();
  expect(server.toy().kept().document.offsets[0]).toBe(10);
});

test('a refusal is told in the server’s own words', async ({ page, server, open }) => {
  await open();
  server.behave('refuses');
  await page.keyboard.press('Tab');
  await page.keyboard.press(nudge);
  await expect(page.getByText('The server refused the last change: The round is over.')).toBeVisible();
});

test('two windows of one person follow each other and do not fight', async ({ page, server, open, context }) => {
  await open();
  const other = await context.newPage();
  await open(other);
  await page.bringToFront();
  await page.keyboard.press('Tab');
  await page.keyboard.press(nudge);
  await expect.poll(async () => (await onPage(other)).offsets[0]).toBe(5);
  await other.bringToFront();
  await other.keyboard.press('Tab');
  await other.keyboard.press(nudge);
  await expect.poll(async () => (await onPage(page)).offsets[0]).toBe(10);
  await expect(other.getByText('All changes are saved.')).toBeVisible();
  await page.close();
  // The one that is left takes over the sending.
  await other.keyboard.press(nudge);
  await expect.poll(() => server.toy().kept().document.offsets[0]).toBe(15);
  await expect(other.getByText('All changes are saved.')).toBeVisible();
});

test('a conflict between two devices shows both and goes on with the one that is chosen', async ({
  page,
  server,
  open,
  browser,
}) => {
  await open();
  const tablet = await (await browser.newContext()).newPage();
  await open(tablet);
  await tablet.keyboard.press('Tab');
  await tablet.keyboard.press('PageUp');
  await expect.poll(() => server.toy().kept().version).toBe(1);
  await page.keyboard.press('Tab');
  await page.keyboard.press(nudge);
  const both = page.getByRole('alert', { name: 'Two versions' });
  await expect(both).toContainText('The two differ in 1 gap');
  await expect(both.getByRole('img')).toHaveCount(2);
  // Work goes on meanwhile and is part of what is chosen.
  await page.keyboard.press(nudge);
  await both.getByRole('button', { name: 'Continue with this one' }).click();
  await expect(page.getByText('All changes are saved.')).toBeVisible();
  expect(server.toy().kept()).toMatchObject({ version: 2, document: { offsets: [10, 0, 0, 0, 0, 0, 0, 0] } });

  await tablet.keyboard.press('PageUp');
  await tablet.getByRole('button', { name: 'Continue with the other' }).click();
  expect((await onPage(tablet)).offsets[0]).toBe(10);
  await tablet.getByRole('button', { name: 'Undo' }).click();
  expect((await onPage(tablet)).offsets[0]).toBe(40);
  await tablet.context().close();
});

test('another person on the same computer finds none of it', async ({ page, server, open }) => {
  await open();
  server.behave('silent');
  await page.keyboard.press('Tab');
  await page.keyboard.press(nudge);
  server.props = { personKey: 'person-2' };
  await page.reload();
  await page.locator('canvas[data-view=working]').waitFor();
  expect((await onPage(page)).offsets[0]).toBe(0);
});

import AxeBuilder from '@axe-core/playwright';
import { expect } from '@playwright/test';
import { test } from './fixture';

test('a sitting ends with the smallest fault seen, and is there the next time', async ({ page, server }) => {
  test.setTimeout(120_000);
  server.props = { practice: true };
  await page.goto(server.address);
  await page.getByRole('combobox', { name: 'Gaps' }).selectOption('with a round side');
  await page.getByRole('button', { name: 'Which is the more even?' }).click();
  const next = page.getByRole('button', { name: 'Next' });
  // Someone who always points at the upper one is right half of the time, so the sitting ends at a large fault.
  for (let look = 0; look < 90; look += 1) {
    const upper = page.getByRole('button', { name: 'The upper one' });
    if (!(await upper.isVisible())) break;
    await upper.click();
    await expect(page.getByRole('status').filter({ hasText: /^(Yes|No): the gap between “.” and “.” (above|below) is too (wide|tight) by \d+ thousandths\.$/ })).toBeVisible();
    if (look === 0) expect((await new AxeBuilder({ page }).include('#main').analyze()).violations.map(({ id }) => id)).toEqual([]);
    await next.click();
  }
  await expect(page.getByText(/You saw faults down to about \d+ thousandths of an em at 48 px/)).toBeVisible();
  await page.reload();
  await expect(page.getByRole('table').getByText('a round side')).toBeVisible();
});

test('which gap is off: the wrong one is told, and the right one named', async ({ page, server }) => {
  server.props = { practice: true };
  await page.goto(server.address);
  await page.getByRole('button', { name: 'Which gap is off?' }).click();
  await page.getByRole('group', { name: 'Gaps of the line, in order' }).getByRole('button').first().click();
  await expect(page.getByRole('status')).toHaveText(/^(Yes|No): the gap between “.” and “.” is too (wide|tight) by 100 thousandths\.$/);
  await page.getByRole('button', { name: 'Leave off' }).click();
  await expect(page.getByRole('button', { name: 'Which gap is off?' })).toBeVisible();
});

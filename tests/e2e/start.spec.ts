import { expect, test } from '@playwright/test';

test('the server answers, and a page that does not exist says so', async ({ page }) => {
  expect((await page.goto('/sign-in'))?.status()).toBe(200);
  await expect(page.getByLabel('E-mail')).toBeVisible();
  expect((await page.goto('/no-such-page'))?.status()).toBe(404);
});

test('the demo instructor can sign in', async ({ page }) => {
  await page.goto('/sign-in');
  await page.getByLabel('E-mail').fill('odile@quayrow.example');
  await page.getByLabel('Password').fill('harbour lights at dusk');
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
  await expect(page).not.toHaveURL(/sign-in/);
});

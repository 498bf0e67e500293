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

test('a proxy is told that it runs and is ready, and monitoring gets its figures at an address of their own', async ({
  request,
  baseURL,
}) => {
  for (const [path, words] of [
    ['/healthz', 'running'],
    ['/readyz', 'ready'],
  ] as const) {
    const answer = await request.get(path);
    expect([answer.status(), (await answer.text()).trim()]).toEqual([200, words]);
  }
  await request.get('/sign-in');
  const { port } = new URL(baseURL!);
  const metrics = await request.get(`http://127.0.0.1:${Number(port) + 5}/metrics`);
  expect(metrics.headers()['content-type']).toContain('application/openmetrics-text');
  const text = await metrics.text();
  expect(text).toMatch(/^kerncrit_request_seconds_count\{method="GET",status="200"\} [1-9]/m);
  expect(text).toMatch(/^kerncrit_operation_seconds_count\{operation="[a-z-]+",outcome="done"\} [1-9]/m);
  expect(text).toMatch(/^kerncrit_database_up 1$/m);
  // Not at the public address.
  expect((await request.get('/metrics')).status()).toBe(404);
});

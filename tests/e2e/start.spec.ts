import { readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from '@playwright/test';
import { startBeside } from './server-beside';

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
  for (const [address, words] of [
    ['/healthz', 'running'],
    ['/readyz', 'ready'],
  ] as const) {
    const answer = await request.get(address);
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

test('one build serves any installation: no secret of one and no setting is in it', async ({ baseURL }) => {
  const port = Number(new URL(baseURL!).port);
  const beside = await startBeside(port + 1);
  try {
    const secretsIn = (folder: string) =>
      Object.values(JSON.parse(readFileSync(path.join(folder, 'secrets.json'), 'utf8')) as Record<string, string>);
    const [one, other] = [secretsIn(path.join(tmpdir(), `kerncrit-e2e-${port}`)), secretsIn(beside.folder)];
    expect(new Set([...one, ...other]).size).toBe(4);
    const words = [...one, ...other, beside.folder];
    const found: string[] = [];
    for (const entry of readdirSync('.next', { recursive: true, withFileTypes: true })) {
      if (!entry.isFile() || entry.parentPath.includes('cache')) continue;
      const text = readFileSync(path.join(entry.parentPath, entry.name), 'latin1');
      found.push(...words.filter((word) => text.includes(word)).map((word) => `${entry.name}: ${word}`));
    }
    expect(found).toEqual([]);
    // What is drawn when it is built could hold a setting: pictures and a list, none of which reads any.
    const { routes } = JSON.parse(readFileSync('.next/prerender-manifest.json', 'utf8')) as { routes: object };
    expect(Object.keys(routes).sort()).toEqual([
      '/_global-error',
      '/apple-icon.png',
      '/icon.svg',
      '/manifest.webmanifest',
    ]);
  } finally {
    await beside.stop();
  }
});

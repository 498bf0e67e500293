import { expect, test } from '@playwright/test';
import { ines, openDemoCourse, signIn } from './demo-people';

const nonceOf = (policy: string | undefined) => /'nonce-([^']+)'/.exec(policy ?? '')?.[1];

for (const address of ['/', '/sign-in', '/no-such-page', '/api/account/data', '/api/auth/csrf', '/api/no-such-route']) {
  test(`${address} carries the security headers`, async ({ request }) => {
    const headers = (await request.get(address)).headers();
    expect(headers['content-security-policy']).toContain("frame-ancestors 'none'");
    expect(headers['content-security-policy']).not.toMatch(/unsafe-inline|unsafe-eval|https:/);
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['referrer-policy']).toBe('same-origin');
    expect(headers['permissions-policy']).toContain('camera=()');
    expect(headers['x-powered-by']).toBeUndefined();
  });
}

test('each answer has a nonce of its own, and every script on the page has it', async ({ request }) => {
  const answers = await Promise.all([request.get('/sign-in'), request.get('/sign-in')]);
  const nonces = answers.map((answer) => nonceOf(answer.headers()['content-security-policy']));
  expect(nonces[0]).toBeTruthy();
  expect(nonces[0]).not.toBe(nonces[1]);
  const scripts = (await answers[0]!.text()).match(/<script\b[^>]*>/g) ?? [];
  expect(scripts.length).toBeGreaterThan(0);
  expect(scripts.filter((script) => !script.includes(`nonce="${nonces[0]}"`))).toEqual([]);
});

test('no page asks anything of another site, and none breaks its own policy', async ({ page, baseURL }) => {
  const elsewhere: string[] = [];
  const broken: string[] = [];
  page.on('request', (request) => {
    if (!request.url().startsWith(baseURL!) && !/^(data|blob):/.test(request.url())) elsewhere.push(request.url());
  });
  page.on('console', (message) => {
    if (/Content.Security.Policy/i.test(message.text())) broken.push(message.text());
  });
  await signIn(page, ines);
  const course = await openDemoCourse(page);
  for (const address of ['/', '/courses', course, '/account', '/words', '/faces', '/records', '/accessibility'])
    await page.goto(address, { waitUntil: 'networkidle' });
  expect(elsewhere).toEqual([]);
  expect(broken).toEqual([]);
});

test('a bench breaks no policy, and its text face does not come before its code', async ({
  page,
  browser,
  baseURL,
}) => {
  const broken: string[] = [];
  page.on('console', (message) => {
    if (/Content.Security.Policy/i.test(message.text())) broken.push(message.text());
  });
  await signIn(page, ines);
  await page.goto(await openDemoCourse(page));
  await page.getByRole('link', { name: 'Signs for a harbour' }).first().click();
  const bench = await page.locator('a[href*="/bench/"]').first().getAttribute('href');
  const storageState = await page.context().storageState();
  const still = await (await browser.newContext({ storageState, baseURL, javaScriptEnabled: false })).newPage();
  const faces = (of: typeof page) => {
    const found: string[] = [];
    of.on('request', (request) => {
      if (request.url().includes('source_serif')) found.push(request.url());
    });
    return found;
  };
  const whileStill = faces(still),
    whenThere = faces(page);
  await still.goto(bench!, { waitUntil: 'networkidle' });
  await expect(still.getByRole('heading', { level: 1 })).toBeVisible();
  expect(whileStill).toEqual([]);
  await still.context().close();
  await page.goto(bench!);
  await expect(page.locator('canvas[data-view=working][data-drawn=thread]')).toBeVisible();
  await expect.poll(() => whenThere.length).toBeGreaterThan(0);
  expect(broken).toEqual([]);
});

test('a write that another site started is refused', async ({ request }) => {
  const write = (headers: Record<string, string>) => request.put('/api/critique/claims', { data: {}, headers });
  const fromElsewhere = await write({ 'sec-fetch-site': 'cross-site', origin: 'https://evil.example' });
  expect(fromElsewhere.status()).toBe(400);
  expect(await fromElsewhere.text()).toContain('came from another site');
  expect(await (await write({ origin: 'https://evil.example' })).text()).toContain('came from another site');
});

test('too many wrong passwords for one account are stopped, for the right one too', async ({ page }) => {
  const attempt = async () => {
    await page.goto('/sign-in');
    await page.getByLabel('E-mail address').fill('nobody.at.all@quayrow.example');
    await page.getByLabel('Password').fill('not this one at all');
    await page.getByRole('button', { name: 'Sign in', exact: true }).click();
    await expect(page.locator('.notice')).toBeVisible();
    return page.locator('.notice').innerText();
  };
  // Four attempts in fifteen seconds, eight in five minutes: whichever is reached first on this machine.
  const answers: string[] = [];
  while (answers.length < 9 && !answers.at(-1)?.includes('too many tries')) answers.push(await attempt());
  expect(
    answers
      .slice(0, 4)
      .join('\n')
      .match(/don’t match/g),
  ).toHaveLength(4);
  expect(answers.at(-1)).toMatch(/too many tries\. Please wait \d+ (seconds|minutes?)/);
});

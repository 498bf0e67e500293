import { expect, test } from '@playwright/test';
import { browserOf, ines, instructor, openDemoCourse, signIn } from './demo-people';

test('a wrong password keeps the address, and signing in leads back to where one was', async ({ page }) => {
  await page.goto('/account#sessions');
  await expect(page).toHaveURL(/\/sign-in\?next=%2Faccount/);
  await page.getByLabel('E-mail address').fill(ines.email);
  await page.getByLabel('Password').fill('not this one at all');
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
  await expect(page.locator('.notice')).toContainText('don’t match');
  await expect(page.locator('.notice')).toBeFocused();
  await expect(page.getByLabel('E-mail address')).toHaveValue(ines.email);
  await page.getByLabel('Password').fill(ines.password);
  await page.getByLabel('Password').press('Enter');
  await expect(page).toHaveURL(/\/account$/);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(ines.name);
});

test('an address of another site is not where it leads', async ({ page }) => {
  await page.goto('/sign-in?next=//evil.example/courses');
  await page.getByLabel('E-mail address').fill(ines.email);
  await page.getByLabel('Password').fill(ines.password);
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
  await expect(page).toHaveURL(/127\.0\.0\.1:\d+\/courses$/);
});

test('a session that was ended elsewhere leads to signing in and back', async ({ browser, page }) => {
  await signIn(page, ines);
  const course = await openDemoCourse(page);
  const other = await browserOf(browser, ines);
  await other.goto('/account');
  await other.getByRole('button', { name: 'Sign out everywhere' }).click();
  await expect(other).toHaveURL(/\/$/);
  await page.goto(course);
  await expect(page).toHaveURL(new RegExp(`/sign-in\\?next=${encodeURIComponent(course)}`));
  await page.getByLabel('E-mail address').fill(ines.email);
  await page.getByLabel('Password').fill(ines.password);
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
  await expect(page).toHaveURL(new RegExp(`${course}$`));
});

test('signing in and out works without JavaScript', async ({ browser }) => {
  const page = await (await browser.newContext({ javaScriptEnabled: false })).newPage();
  await page.goto('/sign-in');
  await page.getByLabel('E-mail address').fill(instructor.email);
  await page.getByLabel('Password').fill('not this one at all');
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
  await expect(page.locator('.notice')).toContainText('don’t match');
  await expect(page.getByLabel('E-mail address')).toHaveValue(instructor.email);
  await page.getByLabel('Password').fill(instructor.password);
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
  await expect(page).toHaveURL(/\/courses$/);
  await page.goto('/account');
  await page.getByRole('button', { name: 'Sign out', exact: true }).click();
  await page.goto('/account');
  await expect(page).toHaveURL(/\/sign-in/);
});

test('signing out by the library’s own address ends the session, also for a cookie that was copied', async ({
  browser,
  page,
}) => {
  await signIn(page, ines);
  const copy = await browser.newContext({ storageState: await page.context().storageState() });
  const { csrfToken } = (await (await page.request.get('/api/auth/csrf')).json()) as { csrfToken: string };
  await page.request.post('/api/auth/signout', { form: { csrfToken, json: 'true' } });
  for (const one of [page, await copy.newPage()]) {
    await one.goto('/account');
    await expect(one).toHaveURL(/\/sign-in/);
  }
});

test('the library’s own addresses know no way in by password', async ({ page }) => {
  const { csrfToken } = (await (await page.request.get('/api/auth/csrf')).json()) as { csrfToken: string };
  const { email, password } = ines;
  await page.request.post('/api/auth/callback/password', { form: { email, password, csrfToken, json: 'true' } });
  await page.goto('/account');
  await expect(page).toHaveURL(/\/sign-in/);
});

test('one takes one’s data along', async ({ page }) => {
  await signIn(page, ines);
  await page.goto('/account');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Download your data (JSON)' }).click(),
  ]);
  const chunks: Buffer[] = [];
  for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
  const records = JSON.parse(Buffer.concat(chunks).toString('utf8')) as {
    person: { email: string };
    proofs: unknown[];
  };
  expect(records.person.email).toBe(ines.email);
  expect(records.proofs.length).toBeGreaterThan(0);
});

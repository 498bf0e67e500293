import { expect, test, type Browser } from '@playwright/test';
import { startIssuer } from './issuer';
import { startReal } from './server-beside';

const client = { id: 'kerncrit', secret: 'a secret between two servers' };
let issuer: Awaited<ReturnType<typeof startIssuer>>;
let server: Awaited<ReturnType<typeof startReal>>;
let joinLink: string;

test.describe.configure({ mode: 'serial' });

test.beforeAll(async ({ baseURL }) => {
  test.setTimeout(300_000);
  issuer = await startIssuer(client);
  server = await startReal(Number(new URL(baseURL!).port) + 1, {
    OIDC_ISSUER: issuer.issuer,
    OIDC_CLIENT_ID: client.id,
    OIDC_CLIENT_SECRET: client.secret,
    OIDC_NAME: 'Quay Row',
  });
});

test.afterAll(async () => {
  await server?.stop();
  await issuer?.stop();
});

const pageOf = async (browser: Browser) => (await browser.newContext({ baseURL: server.origin })).newPage();

async function throughSchool(browser: Browser, claims: typeof issuer.state.next, from = '/sign-in') {
  issuer.state.next = claims;
  const page = await pageOf(browser);
  await page.goto(from);
  await page.getByRole('button', { name: 'Sign in through Quay Row' }).click();
  await page.waitForURL(
    (url) => url.origin === server.origin && !url.pathname.startsWith('/api/') && url.href !== server.origin + from,
  );
  return page;
}

test('the first instructor comes by the link that the console printed, opens a course, and invites', async ({
  browser,
}) => {
  const page = await pageOf(browser);
  await page.goto(new URL(server.firstLink!).pathname);
  await page.getByLabel('Name').fill('Thea Brandvold');
  await page.getByLabel('E-mail address').fill('thea@quayrow.example');
  await page.getByLabel('Password').fill('cobbles after the rain');
  await page.getByRole('button', { name: 'Create account' }).click();
  await expect(page).toHaveURL(/\/courses\/new$/);
  await page.getByLabel('Title').fill('Signs and letters');
  await page.getByLabel('Time zone').selectOption('Europe/Lisbon');
  await page.getByRole('button', { name: 'Open the course' }).click();
  await expect(page.getByRole('heading', { name: 'The course is open' })).toBeVisible();
  await page.getByRole('link', { name: 'Invite people' }).click();
  await page.getByRole('button', { name: 'Create link' }).click();
  joinLink = new URL(await page.getByLabel('The link', { exact: true }).inputValue()).pathname;
  expect((await page.goto(new URL(server.firstLink!).pathname))?.status()).toBe(404);
});

test('a student comes through the school’s own sign-in, back to the join link, and joins', async ({ browser }) => {
  const page = await throughSchool(
    browser,
    { sub: 's-1', email: 'ines@quayrow.example', email_verified: true, name: 'Ines Calloway' },
    `/sign-in?next=${joinLink}`,
  );
  await expect(page).toHaveURL(server.origin + joinLink);
  await page.getByRole('button', { name: 'Join as Ines Calloway' }).click();
  await expect(page).toHaveURL(/\/courses\/[^/]+$/);
  expect(issuer.state.complaints).toEqual([]);
});

test('the same subject is the same person, under another address too', async ({ browser }) => {
  const page = await throughSchool(browser, {
    sub: 's-1',
    email: 'ines.married@quayrow.example',
    email_verified: true,
  });
  await page.goto('/account');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Ines Calloway');
  await expect(page.getByRole('link', { name: 'Signs and letters' })).toBeVisible();
});

test('an address that the school did not confirm is tied to nothing', async ({ browser }) => {
  const page = await throughSchool(browser, { sub: 's-2', email: 'thea@quayrow.example', email_verified: false });
  await expect(page.locator('.notice')).toContainText('did not confirm an e-mail address');
  await page.goto('/courses');
  await expect(page).toHaveURL(/\/sign-in/);
});

test('next-auth’s own session tells programs nothing about a person', async ({ browser }) => {
  const page = await throughSchool(browser, { sub: 's-1', email: 'ines@quayrow.example', email_verified: true });
  const session = (await (await page.request.get('/api/auth/session')).json()) as object;
  expect(Object.keys(session)).toEqual(['expires']);
});

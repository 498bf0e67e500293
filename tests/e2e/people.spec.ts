import { expect, test } from '@playwright/test';
import { students } from '@/prisma/seed/people';
import { browserOf, instructor, forgetful, openDemoCourse } from './demo-people';
import { signInAs } from './walk';

const email = (name: string) => `${name}.${Date.now()}@quayrow.example`;

test('somebody joins by a link, is removed, and put back', async ({ browser }) => {
  const teaching = await browserOf(browser, instructor);
  const course = await openDemoCourse(teaching);
  await teaching.goto(`${course}/people`);
  await teaching.getByText('Make a join link').click();
  await teaching.getByRole('button', { name: 'Create link' }).click();
  const link = await teaching.getByLabel('The link', { exact: true }).inputValue();
  expect(link).toMatch(/\/join\/[A-Za-z0-9_-]{43}$/);

  const newcomer = await (await browser.newContext({ viewport: { width: 390, height: 800 } })).newPage();
  const address = email('wim');
  await newcomer.goto(new URL(link).pathname);
  await newcomer.getByLabel('Name').fill('Wim Taubering');
  await newcomer.getByLabel('E-mail address').fill(address);
  await newcomer.getByLabel('Password').fill('short');
  await newcomer.getByRole('button', { name: 'Create account and join' }).click();
  await expect(newcomer.locator('.notice')).toContainText('at least 10 characters');
  await expect(newcomer.getByLabel('Name')).toHaveValue('Wim Taubering');
  await newcomer.getByLabel('Password').fill('gulls over slate roofs');
  await newcomer.getByRole('button', { name: 'Create account and join' }).click();
  await expect(newcomer).toHaveURL(new RegExp(`${course}$`));

  await teaching.goto(`${course}/people`);
  await teaching.getByRole('link', { name: 'Wim Taubering', exact: true }).click();
  await teaching.getByRole('button', { name: 'Remove Wim Taubering' }).click();
  await expect(teaching.getByText('Removed from the course')).toBeVisible();

  await newcomer.goto(course);
  await expect(newcomer).toHaveURL(/\/sign-in/);
  await newcomer.getByLabel('E-mail address').fill(address);
  await newcomer.getByLabel('Password').fill('gulls over slate roofs');
  await newcomer.getByRole('button', { name: 'Sign in', exact: true }).click();
  await expect(newcomer.getByRole('heading', { level: 1 })).toHaveText('Page not found');
  await newcomer.goto(new URL(link).pathname);
  await newcomer.getByRole('button', { name: 'Join as Wim Taubering' }).click();
  await expect(newcomer.locator('.notice')).toContainText('have been removed from it');

  await teaching.getByRole('button', { name: 'Restore' }).click();
  await expect(teaching.getByRole('button', { name: 'Remove Wim Taubering' })).toBeVisible();
  expect((await newcomer.goto(course))?.status()).toBe(200);
});

test('a link for a new password is handed over, works once, and ends the old one', async ({ browser }) => {
  const teaching = await browserOf(browser, instructor);
  const course = await openDemoCourse(teaching);
  await teaching.goto(`${course}/people`);
  await teaching.getByRole('link', { name: forgetful.name, exact: true }).click();
  await teaching.getByRole('button', { name: 'Create a password link' }).click();
  const link = new URL(await teaching.getByLabel('The link', { exact: true }).inputValue()).pathname;

  const student = await (await browser.newContext()).newPage();
  await student.goto('/sign-in');
  await student.getByRole('link', { name: 'Forgotten your password?' }).click();
  await expect(student.getByText('This server sends no mail')).toBeVisible();
  await student.goto(link);
  await student.getByLabel('New password').fill(`${forgetful.name.toLowerCase()}`);
  await student.getByRole('button', { name: 'Set the password and sign in' }).click();
  await expect(student.locator('.notice')).toContainText('guessed at once');
  await student.getByLabel('New password').fill('kites above the mole');
  await student.getByRole('button', { name: 'Set the password and sign in' }).click();
  await expect(student).toHaveURL(/\/courses$/);
  expect((await student.goto(link))?.status()).toBe(404);
});

test('the only instructor can’t leave, and is told what to do', async ({ browser }) => {
  const teaching = await browserOf(browser, instructor);
  const course = await openDemoCourse(teaching);
  await teaching.goto(`${course}/people`);
  await teaching.getByRole('link', { name: instructor.name }).last().click();
  await expect(teaching).toHaveURL(/\/people\/.+/);
  await teaching.getByRole('button', { name: 'Leave the course' }).click();
  await expect(teaching.locator('.notice')).toContainText('Make another member an instructor first');
});

test('a form that gets no answer keeps the page and what was typed, and says so', async ({ page }) => {
  await signInAs(page, students[1]!);
  await page.goto('/account');
  const name = page.getByLabel('As it appears on class lists');
  const send = page.getByRole('button', { name: 'Change the name' });
  const told = page.getByRole('alert').filter({ hasText: 'No answer came from the server' });
  await name.fill('Bram of the Long Pier');
  await page.context().setOffline(true);
  await send.click();
  await expect(told).toContainText('What you typed is still here');
  await expect(name).toHaveValue('Bram of the Long Pier');
  await page.context().setOffline(false);

  // As who asks for more than their share is answered.
  await page.reload();
  await page.route('**/account', (route) =>
    route.request().method() === 'POST' ? route.fulfill({ status: 429, json: {} }) : route.continue(),
  );
  await name.fill('Bram of the Longer Pier');
  await send.click();
  await expect(told).toBeVisible();
  await expect(name).toHaveValue('Bram of the Longer Pier');
});

import type { Browser, BrowserContext, Page } from '@playwright/test';
import { assistant, instructor, students } from '@/prisma/seed/people';

/** The demo's people, by what they do in the tests. `student` and `other` have not sent anything in the demo. */
export const demo = { instructor, assistant, student: students.at(-1)!, other: students.at(-2)! };

/** A browser of one's own for one of the demo's people, signed in by the form. */
export async function signedIn(
  browser: Browser,
  who: { email: string; password: string },
  options: Parameters<Browser['newContext']>[0] = {},
): Promise<{ context: BrowserContext; page: Page }> {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  await page.goto('/sign-in');
  await page.getByLabel('E-mail').fill(who.email);
  await page.getByLabel('Password', { exact: true }).fill(who.password);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'));
  return { context, page };
}

import { expect, type Browser, type Page } from '@playwright/test';
import { instructor, students } from '../../prisma/seed/people';

export type SignIn = { email: string; password: string };

export { instructor };
type Named = SignIn & { name: string };
/** Two students with work of their own, and one whose password changes and whom no other test signs in. */
export const [ines, bram] = students as unknown as [Named, Named];
export const forgetful: Named = students.at(-3)!;

export async function signIn(page: Page, { email, password }: SignIn): Promise<void> {
  await page.goto('/sign-in');
  await page.getByLabel('E-mail address').fill(email);
  await page.getByLabel('Password').fill(password);
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
  await expect(page).toHaveURL(/\/courses$/);
}

/** A browser of one's own, signed in. */
export async function browserOf(browser: Browser, person: SignIn): Promise<Page> {
  const page = await (await browser.newContext()).newPage();
  await signIn(page, person);
  return page;
}

/** The demo's one course, from the list. */
export async function openDemoCourse(page: Page): Promise<string> {
  await page.goto('/courses');
  const address = await page.getByRole('link', { name: 'Lettering for display, first term' }).getAttribute('href');
  return address!;
}

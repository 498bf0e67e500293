import { expect, test, type Page } from '@playwright/test';
import { axeOn } from './axe';
import { students } from '../../prisma/seed/people';
import { openDemoCourse, signIn } from './demo-people';

// A student who has sent nothing, so that no other test looks at their lines.
const student = students.at(-1)!;

/** Takes one of the seldom ways in the bar of the bench. */
async function fromMore(page: Page, name: string | RegExp): Promise<void> {
  const way = page.getByRole('link', { name });
  if (!(await way.isVisible())) await page.getByText('More', { exact: true }).click();
  await way.click();
}

const saved = (page: Page) => expect(page.locator('[data-save="saved"]')).toBeVisible();

test('one text in two weights: together, started from one for the other, and tried without sending', async ({
  page,
}) => {
  await signIn(page, student);
  await page.goto(await openDemoCourse(page));
  await page.getByRole('link', { name: 'Signs for a harbour' }).first().click();
  await expect(page.getByRole('heading', { level: 1, name: 'Signs for a harbour' })).toBeVisible();
  await page
    .getByRole('link', { name: /^all \d spacings of it/ })
    .first()
    .click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('“AVOWAL” together');

  // Nothing has been set, so there is nothing to start from, and nothing is shown before a proof.
  await expect(page.getByText('Start from this one')).toHaveCount(0);
  await expect(page.getByText(/the plot is shown once you have sent a proof/)).toBeVisible();
  await expect(page.locator('figure.chart')).toHaveCount(0);
  await page.getByRole('link', { name: 'All at one size' }).click();
  await expect(page.getByText(/not how they will be read/)).toBeVisible();
  expect(await axeOn(page)).toEqual([]);

  // The lighter one is set by keyboard.
  await page
    .getByRole('link', { name: /^Space line/ })
    .first()
    .click();
  const leave = page.getByRole('button', { name: /leave the guide/i });
  await expect(leave.or(page.locator('[data-gap="0"]')).first()).toBeVisible();
  if (await leave.isVisible()) await leave.click();
  const lighter = page.url();
  await page.locator('[data-gap="0"]').focus();
  await page.keyboard.press('PageDown');
  await saved(page);
  await fromMore(page, /^All \d spacings of it/);

  // From there to the bold one: offered, taken in one step, and taken back.
  await page.getByText('Start from this one').first().press('Enter');
  const offer = page.getByRole('link', { name: /Work Sans Bold/ });
  await expect(offer).toBeVisible();
  await offer.press('Enter');
  const start = page.getByRole('region', { name: 'Start from another spacing' });
  await expect(start).toContainText('replaces 1 offset of this line’s 5 gaps');
  const slider = page.locator('[data-gap="0"]');
  await expect(slider).toHaveValue('0');
  await start.getByRole('button', { name: 'Start from it' }).press('Enter');
  await expect(slider).toHaveValue('-20');
  expect(page.url()).not.toContain('start=');
  await saved(page);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(slider).toHaveValue('0');
  await saved(page);

  // A trial is another draft: the line stays as it was, until it is started from the trial.
  await fromMore(page, 'Try it without sending');
  await expect(page.getByText('A trial of your own: it is kept, and never sent.')).toBeVisible();
  await page.locator('[data-gap="1"]').focus();
  await page.keyboard.press('PageUp');
  await saved(page);
  await fromMore(page, 'Start my line from this trial');
  await expect(page.getByRole('region', { name: 'Start from another spacing' })).toContainText(
    'Your trial of this line',
  );
  await expect(page.locator('[data-gap="1"]')).toHaveValue('0');
  await page.getByRole('button', { name: 'Leave mine as it is' }).click();

  // What this student had before.
  await page.goto(lighter);
  await page.getByRole('button', { name: 'Whole line back to built-in' }).click();
  await saved(page);
});

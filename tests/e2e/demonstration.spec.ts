import { expect, test, type Page } from '@playwright/test';
import { axeOn } from './axe';
import { browserOf, ines, instructor, openDemoCourse } from './demo-people';

const title = 'Only the first two gaps';

/** The demo's exercise, by way of its course. */
async function openExercise(page: Page): Promise<string> {
  await page.goto(await openDemoCourse(page));
  const address = await page.getByRole('link', { name: 'Signs for a harbour' }).first().getAttribute('href');
  return address!.replace(/[?#].*/, '');
}

test('a setting is recorded as it is made, survives a reload, is looked at, shown, and taken back', async ({
  browser,
}) => {
  test.setTimeout(300_000);
  const page = await browserOf(browser, instructor);
  const exercise = await openExercise(page);
  await page.goto(`${exercise}/references`);
  // A line of its own, without a reference in the demo, so that nothing else changes.
  await page.getByRole('link', { name: 'Set a reference' }).last().click();
  const slider = page.getByRole('slider').first();
  await slider.waitFor();
  const before = await slider.getAttribute('aria-valuetext');

  await page.getByRole('button', { name: 'Record a demonstration' }).click();
  await slider.focus();
  await page.keyboard.press('PageDown');
  const standing = page.locator('[data-recording]');
  await expect(standing).toHaveText('Recording: 1 step.');
  await page.getByLabel(/^Step 1, .*20 closer: why/).fill('Both lean into it.');
  await slider.focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('ArrowLeft');
  await expect(standing).toHaveText('Recording: 3 steps.');
  await page.keyboard.press('Control+z');
  await expect(standing).toHaveText('Recording: 2 steps.');

  await page.reload();
  await expect(standing).toHaveText('Recording: 2 steps.');
  await page.getByRole('button', { name: 'Pause' }).click();
  await page.getByRole('slider').first().focus();
  await page.keyboard.press('ArrowUp');
  await expect(standing).toHaveText('Recording pauses: 2 steps.');
  await page.getByRole('button', { name: 'Stop' }).click();
  await page.getByRole('button', { name: 'Keep it' }).click();
  await expect(page.getByText('Give the demonstration a title.')).toBeVisible();
  await page.getByLabel('Title').fill(title);

  await page.context().setOffline(true);
  await page.getByRole('button', { name: 'Keep it' }).click();
  await expect(page.getByText(/No answer from the server. The recording is kept on this device/)).toBeVisible();
  await page.context().setOffline(false);
  await page.getByRole('button', { name: 'Keep it' }).click();
  await page.getByRole('link', { name: 'Review it before showing it' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(title);
  const address = page.url();

  // A student gets the same bytes as for one that never existed.
  const student = await browserOf(browser, ines);
  const bytes = async (url: string) => {
    const answer = await student.request.get(url);
    return `${answer.status()} ${(await answer.text()).replaceAll(/nonce="[^"]*"|[0-9a-f]{8}-[0-9a-f-]{27}|'nonce-[^']*'/g, '').length}`;
  };
  expect((await student.request.get(address)).status()).toBe(404);
  expect(await bytes(address)).toBe(await bytes(address.replace(/.$/, (last) => (last === '0' ? '1' : '0'))));

  await expect(page.getByText(/and so a kind of reference/)).toBeVisible();
  await page.getByRole('button', { name: 'Show it to the course' }).click();
  await expect(page.getByText('The course sees it', { exact: true })).toBeVisible();
  await student.goto(exercise);
  await student.getByRole('link', { name: title }).click();
  await expect(student.getByText('Step forward')).toBeVisible();
  expect((await axeOn(student)).map(({ id }) => id)).toEqual([]);

  // After the removal, the undo is on the page; then for good, so that the demo is as it was.
  await page.goto(`${exercise}/demonstrations`);
  await page
    .getByRole('form', { name: `Remove “${title}”` })
    .getByRole('button')
    .click();
  await expect(page.getByText(`“${title}” is removed.`)).toBeVisible();
  expect((await student.request.get(address)).status()).toBe(404);
  await page.getByRole('button', { name: 'Restore' }).first().click();
  await expect(page.getByRole('link', { name: title })).toBeVisible();
  await page
    .getByRole('form', { name: `Remove “${title}”` })
    .getByRole('button')
    .click();
  await expect(page.getByText(`“${title}” is removed.`)).toBeVisible();
  await page.goto(`${exercise}/references`);
  await page.getByRole('link', { name: 'Open yours on the bench' }).last().click();
  await page.getByText('More', { exact: true }).click();
  await page
    .getByRole('link', { name: 'Remove this reference…' })
    .or(page.getByRole('button', { name: 'Remove this reference…' }))
    .click();
  await page.getByRole('button', { name: 'Remove it' }).last().click();
  await expect(page).toHaveURL(/\/references$/);
  expect(before).toMatch(/^offset 0/);
});

test('what is shown is gone through by keys of ours, and spoken', async ({ browser }) => {
  const page = await browserOf(browser, ines);
  const exercise = await openExercise(page);
  await page.goto(exercise);
  await page.getByRole('link', { name: 'From the widest hole to the quiet gaps' }).click();
  const live = page.locator('[aria-live=polite]');
  await expect(live).toHaveText('How the line was at the beginning.');
  await page.keyboard.press('j');
  await expect(live).toContainText(/\d+ (closer|wider)\./);
  await expect(page.getByText(/^step 1 of \d+$/)).toBeVisible();
  await page.getByRole('group', { name: /step by step: Enter/ }).focus();
  await page.keyboard.press('End');
  await expect(live).toContainText(/Last the whole line/);
  await page.keyboard.press('Shift+Enter');
  await expect(live).not.toContainText(/Last the whole line/);
  await page.keyboard.press('Home');
  await page.keyboard.press('w');
  await expect(page.getByRole('button', { name: 'White between' })).toHaveAttribute('aria-pressed', 'true');
  await page.keyboard.press('a');
  await expect(page.getByRole('button', { name: 'Stop' })).toBeVisible();
  await expect(page.getByText(/^step 1 of \d+$/)).toBeVisible();
  await page.keyboard.press('f');
  await expect(page.getByText(/^step 0 of \d+$/)).toBeVisible();
  // Where less motion is asked for, nothing plays by itself.
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await expect(page.getByRole('button', { name: 'Play' })).toHaveCount(0);
  // From the bench it is one link away.
  await page.getByRole('link', { name: 'Your own line on the bench' }).click();
  const [guide, more] = [
    page.getByRole('button', { name: 'Leave the guide' }),
    page.getByText('More', { exact: true }),
  ];
  await guide.or(more).first().waitFor();
  // Slow, so that "More" would be opened before the page has come again without its guide.
  await page.route('**/bench/**', async (route) => {
    const answer = await route.fetch();
    await new Promise((resolve) => setTimeout(resolve, 700));
    await route.fulfill({ response: answer });
  });
  const guided = await guide.isVisible();
  const told = guided ? page.waitForResponse((answer) => answer.request().method() === 'POST') : null;
  if (guided) await guide.click();
  await more.click();
  const shown = page.getByRole('link', { name: 'From the widest hole to the quiet gaps' });
  await expect(shown).toBeVisible();
  // What was opened stays open when the page comes again.
  await told;
  await shown.click();
  await expect(live).toHaveText('How the line was at the beginning.');
});

import { expect, test, type Browser, type Page } from '@playwright/test';
import { axeOn } from './axe';
import { putAwayExercise } from './own-exercise';

// One long walk each, with axe on every page.
test.setTimeout(300_000);

const people = {
  instructor: { email: 'odile@quayrow.example', password: 'harbour lights at dusk' },
  assistant: { email: 'tobin@quayrow.example', password: 'seven ropes of hemp' },
};

async function signedIn(browser: Browser, who: keyof typeof people): Promise<Page> {
  const page = await (await browser.newContext()).newPage();
  await page.goto('/sign-in');
  await page.getByLabel('E-mail').fill(people[who].email);
  await page.getByLabel('Password').fill(people[who].password);
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
  await expect(page).not.toHaveURL(/sign-in/);
  return page;
}

/** axe finds nothing on the page as it is. */
async function clean(page: Page) {
  // After a press on a link the title comes with the page.
  await expect(page).toHaveTitle(/./);
  const violations = await axeOn(page);
  expect(violations.map(({ id, nodes }) => `${page.url()} ${id}: ${nodes[0]?.html}`)).toEqual([]);
}

let putAway = () => {};
test.afterAll(() => putAway());

test('an instructor plans an exercise, publishes it, and changes a specimen that a reference stands on', async ({
  browser,
  baseURL,
}) => {
  const page = await signedIn(browser, 'instructor');
  await page.goto('/courses');
  await page.getByRole('link', { name: 'Lettering for display, first term' }).click();
  await page.getByRole('link', { name: 'Plan an exercise' }).click();
  await clean(page);

  // An empty title is refused, and the brief that was typed stays.
  await page.getByRole('textbox', { name: 'Brief' }).fill('Two words for a door.');
  await page.getByRole('button', { name: 'Create the draft' }).click();
  await expect(page.getByRole('main').getByRole('alert')).toContainText('Give the exercise a title');
  await expect(page.getByRole('textbox', { name: 'Brief' })).toHaveValue('Two words for a door.');
  await page.getByRole('textbox', { name: 'Title' }).fill('Words for a door');
  await page.getByRole('button', { name: 'Create the draft' }).click();
  await expect(page.getByRole('heading', { name: 'Plan', level: 1 })).toBeVisible();
  await clean(page);
  await page.waitForURL(/\/plan$/);
  const plan = page.url();
  const exercise = plan.replace(/\/plan.*$/, '');
  putAway = () => putAwayExercise(baseURL!, exercise.split('/').at(-1)!);

  // Four specimens at once; a size without a unit is refused with what was typed.
  await page.getByRole('link', { name: 'Add lines' }).click();
  await page.getByRole('textbox', { name: 'Lines' }).fill('AVON TILE\nToast');
  await page.locator('summary', { hasText: 'Lato' }).click();
  await page.getByLabel('Regular', { exact: true }).and(page.locator(':visible')).check();
  await page.getByLabel('Black', { exact: true }).and(page.locator(':visible')).check();
  await page.getByRole('textbox', { name: 'Sizes' }).fill('72');
  await page.getByRole('button', { name: 'Add the lines' }).click();
  await expect(page.getByRole('main').getByRole('alert')).toContainText('“72” is not a size');
  await expect(page.getByRole('textbox', { name: 'Lines' })).toHaveValue(/AVON TILE/);
  await page.getByRole('textbox', { name: 'Sizes' }).fill('72 px');
  await expect(page.getByText('2 texts × 2 faces × 1 size × 1 ground = 4 lines.')).toBeVisible();
  await clean(page);
  await page.getByRole('button', { name: 'Add the lines' }).click();
  await expect(page.getByText('4 lines added')).toBeVisible();
  await expect(page.getByRole('img', { name: 'AVON TILE' })).toHaveCount(2);

  // A round whose due date the clocks skip is accepted and reported (Europe/Lisbon goes forward at 01:00 on 28 March
  // 2027).
  await page.getByRole('link', { name: 'Add a round' }).click();
  await page.getByLabel('Due', { exact: false }).first().fill('2027-03-28T01:30');
  await clean(page);
  await page.getByRole('button', { name: 'Add the round' }).click();
  await expect(page.getByText('does not happen in Europe/Lisbon')).toBeVisible();

  // Distance from the references alone is not published.
  await page.getByRole('link', { name: 'Add a criterion' }).click();
  await page.getByRole('textbox', { name: 'Name' }).fill('Nearness');
  await page.getByRole('radio', { name: 'Nearness to the references' }).check();
  await clean(page);
  await page.getByRole('button', { name: 'Add the criterion' }).click();
  await page.getByRole('link', { name: 'Publish…' }).click();
  await expect(page.getByText('The only criterion is distance from the references')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Publish to the course' })).toHaveCount(0);
  await clean(page);
  await page.goto(plan);
  await page.getByRole('link', { name: 'Add a criterion' }).click();
  await page.getByRole('textbox', { name: 'Name' }).fill('Evenness');
  await page.getByRole('button', { name: 'Add the criterion' }).click();
  await expect(page.getByRole('link', { name: 'Evenness' })).toBeVisible();

  // A reference on the bench, by keyboard, saved by itself.
  await page.goto(`${exercise}/references`);
  await clean(page);
  await page.getByRole('link', { name: 'Set a reference' }).first().click();
  const offset = page
    .getByRole('textbox', { name: 'Offset' })
    .or(page.getByLabel('Offset', { exact: true }))
    .first();
  await offset.fill('-24');
  await offset.press('Enter');
  await expect(page.getByText('All changes are saved.')).toBeVisible();
  await page.goto(`${exercise}/references`);
  await expect(page.getByText('1 of 4 lines have one')).toBeVisible();

  await page.goto(`${exercise}/plan/publish`);
  await page.getByRole('button', { name: 'Publish to the course' }).click();
  await expect(page.getByText('Published: everyone in the course')).toBeVisible();
  await clean(page);

  // A change says what it does before it is done.
  await page.goto(plan);
  await page.getByRole('link', { name: /^1\. “AVON TILE”/ }).click();
  await clean(page);
  await page.getByRole('textbox', { name: 'Text', exact: true }).fill('AVON TILES');
  await page.getByRole('button', { name: 'Preview this change' }).click();
  await expect(page.getByText('7 pairs stay, none goes, 1 pair is new.')).toBeVisible();
  await expect(page.getByText('1 reference is copied')).toBeVisible();
  await clean(page);
  await page.getByRole('button', { name: 'Change the line' }).click();
  await expect(page.getByRole('link', { name: /^1\. “AVON TILES”/ })).toBeVisible();
});

test('of two instructors who change the brief at once, the second is told and loses nothing', async ({ browser }) => {
  const [one, two] = [await signedIn(browser, 'instructor'), await signedIn(browser, 'instructor')];
  await one.goto('/courses');
  await one.getByRole('link', { name: 'Lettering for display, first term' }).click();
  await one.getByRole('link', { name: 'Plan an exercise' }).click();
  await one.getByRole('textbox', { name: 'Title' }).fill('Edited twice');
  await one.getByRole('button', { name: 'Create the draft' }).click();
  await one.getByRole('link', { name: 'Change the brief and options' }).click();
  await one.waitForURL(/plan\/brief$/);
  await two.goto(one.url());
  await one.getByRole('textbox', { name: 'Brief' }).fill('First to save.');
  await one.getByRole('button', { name: 'Save' }).click();
  await expect(one.getByText('First to save.')).toBeVisible();
  await two.getByRole('textbox', { name: 'Brief' }).fill('Second to save.');
  await two.getByRole('button', { name: 'Save' }).click();
  await expect(two.getByRole('main').getByRole('alert')).toContainText('Another person changed this exercise');
  await expect(two.getByRole('textbox', { name: 'Brief' })).toHaveValue('Second to save.');
  await expect(two.getByText('First to save.')).toBeVisible();
  await clean(two);
  await two.getByRole('button', { name: 'Save' }).click();
  await expect(two.getByText('Second to save.')).toBeVisible();

  // A draft is removed and restored.
  await two.getByRole('link', { name: 'Remove this draft…' }).click();
  await two.getByRole('button', { name: 'Remove the draft' }).click();
  await expect(two.getByText('This draft was removed')).toBeVisible();
  await clean(two);
  await two.getByRole('button', { name: 'Restore' }).click();
  await expect(two.getByRole('heading', { name: 'Brief and options' })).toBeVisible();
});

test('an assistant sets references and plans nothing', async ({ browser }) => {
  const page = await signedIn(browser, 'assistant');
  await page.goto('/courses');
  await page.getByRole('link', { name: 'Lettering for display, first term' }).click();
  await page.getByRole('link', { name: 'Signs for a harbour' }).click();
  await expect(page.getByRole('link', { name: 'Plan', exact: true })).toHaveCount(0);
  await page.getByRole('link', { name: 'References' }).click();
  await expect(page.getByRole('heading', { name: 'References', level: 1 })).toBeVisible();
  const plan = await page.goto(`${page.url().replace(/\/references.*$/, '')}/plan`);
  expect(plan?.status()).toBe(404);
});

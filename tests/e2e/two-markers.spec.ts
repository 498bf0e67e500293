import { expect, test, type Page } from '@playwright/test';
import { assistant, instructor, secondAssistant, students } from '@/prisma/seed/people';
import { axeOn } from './axe';
import { ownExercise } from './own-exercise';
import { signedIn } from './people';

/** Two markers on a proof of an exercise of its own: blind marking, agreement, settling, release. */
test.describe.configure({ mode: 'serial' });

let own: ReturnType<typeof ownExercise>;
let instructorPage: Page, first: Page, second: Page, student: Page;
let round: string;
const author = students[0]!;

test.beforeAll(async ({ browser, baseURL }) => {
  own = ownExercise(baseURL!, 'Two pairs of eyes', [author.email]);
  round = `/exercises/${own.exerciseId}/rounds/1`;
  instructorPage = (await signedIn(browser, instructor)).page;
  first = (await signedIn(browser, assistant)).page;
  second = (await signedIn(browser, secondAssistant)).page;
  student = (await signedIn(browser, author)).page;
});
test.afterAll(() => own.putAway());

test('the instructor asks for a second marker on every proof, and is told how a share is chosen', async () => {
  await instructorPage.goto(`/exercises/${own.exerciseId}/plan/rounds/${own.roundId}`);
  await expect(instructorPage.getByText('no one can influence the draw', { exact: false })).toBeVisible();
  await instructorPage.getByRole('radio', { name: 'Every proof' }).check();
  await instructorPage.getByRole('button', { name: 'Save the second marker' }).click();
  await expect(instructorPage.getByText('Saved. What was begun stays, whatever is chosen.')).toBeVisible();
});

test('the first marker gives levels, and cannot be the second', async () => {
  await first.goto(`${round}/critique`);
  await first.locator('main a[href^="/critique/"]').first().click();
  await expect(first.getByText('this is the first marking', { exact: false })).toBeVisible();
  await giveAll(first, 'lowest');
  await first.goto(`${round}/second`);
  await expect(first.getByText('you have a part in the first marking')).toBeVisible();
  await expect(first.getByRole('link', { name: 'Start the next second marking' })).toHaveCount(0);
  await sound(first);
});

test('the second marker sees nothing of the first, and gives other levels', async () => {
  await second.goto(`${round}/second`);
  await second.getByRole('link', { name: 'Start the next second marking' }).click();
  await expect(second.getByText('this is the second marking', { exact: false })).toBeVisible();
  await expect(second.getByText('No total yet')).toBeVisible();
  await expect(second.getByText('How the marks came about')).toHaveCount(0);
  expect(await second.content()).not.toContain(assistant.name);
  await giveAll(second, 'highest');
  await second.reload();
  await expect(second.getByText('Two people have marked this proof', { exact: false })).toBeVisible();
});

test('the release warns of differences and says what would count', async () => {
  await instructorPage.goto(`${round}/release`);
  await expect(instructorPage.getByText('the two markers differ and it isn’t settled', { exact: false })).toBeVisible();
  await expect(instructorPage.getByRole('checkbox', { name: author.name })).not.toBeChecked();
  await instructorPage.getByRole('link', { name: `What ${author.name} will see` }).click();
  await expect(
    instructorPage.getByText('The first marker’s level would count', { exact: false }).first(),
  ).toBeVisible();
});

test('the agreement claims nothing from one proof, and a difference is settled with a reason', async () => {
  await instructorPage.goto(`${round}/agreement`);
  await expect(instructorPage.getByText('1 proof: too few to say.', { exact: false }).first()).toBeVisible();
  await sound(instructorPage);
  const [download] = await Promise.all([
    instructorPage.waitForEvent('download'),
    instructorPage.getByRole('link', { name: 'Agreement as CSV' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('agreement-round-1.csv');
  await instructorPage.getByRole('link', { name: author.name }).click();
  await sound(instructorPage);
  const settle = instructorPage.getByRole('region', { name: /^Settle “/ });
  const open = () => instructorPage.getByRole('cell', { name: 'they differ', exact: false });
  const differing = await open().count();
  expect(differing).toBeGreaterThan(0);
  await settle.getByRole('radio').nth(1).check();
  await settle.getByRole('button', { name: 'Settle', exact: true }).click();
  await expect(settle.getByText('Say in a few words why this level counts', { exact: false }).first()).toBeVisible();
  for (let left = differing; left > 0; left -= 1) {
    await settle.getByRole('radio').nth(1).check();
    await settle.getByLabel('Why').fill('Looked at it together, on its head.');
    await settle.getByRole('button', { name: 'Settle', exact: true }).click();
    await expect(open()).toHaveCount(left - 1);
    await expect(
      instructorPage.getByText(
        left > 1 ? `Settled. ${left - 1} more to settle` : 'Settled. Nothing is left to settle',
        {
          exact: false,
        },
      ),
    ).toBeVisible();
  }
  await expect(instructorPage.getByText('Looked at it together, on its head.').first()).toBeVisible();
});

test('what was settled goes out to the student, without a word of who marked', async () => {
  await instructorPage.goto(`${round}/release`);
  await expect(instructorPage.getByText('it isn’t settled', { exact: false })).toHaveCount(0);
  await expect(instructorPage.getByRole('checkbox', { name: author.name })).toBeChecked();
  await instructorPage.getByRole('button', { name: 'Release to those chosen' }).click();
  await expect(instructorPage.getByText('Notes and marks went out to 1 student', { exact: false })).toBeVisible();
  await student.goto(`/proofs/${own.proofIds[0]}`);
  await expect(student.getByText(/Together .* of .*, which is/).first()).toBeAttached();
  for (const hidden of ['Looked at it together', secondAssistant.name, 'second marker'])
    expect(await student.content()).not.toContain(hidden);
});

test('the released marks leave as one zip for machines', async () => {
  await instructorPage.goto(`/exercises/${own.exerciseId}/class?round=1`);
  await instructorPage.getByText('Export', { exact: true }).click();
  const [download] = await Promise.all([
    instructorPage.waitForEvent('download'),
    instructorPage.getByRole('link', { name: /OneRoster/ }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('oneroster-round-1.zip');
  await first.goto(`/exercises/${own.exerciseId}/class?round=1`);
  await first.getByText('Export', { exact: true }).click();
  await expect(first.getByRole('link', { name: 'Pairs as CSV' })).toBeVisible();
  await expect(first.getByRole('link', { name: /OneRoster/ })).toHaveCount(0);
});

test('a second marker skips one, which comes last for them alone, gives one back, and takes both up again', async ({
  baseURL,
}) => {
  const more = ownExercise(
    baseURL!,
    'Three to look at again',
    students.slice(0, 3).map(({ email }) => email),
    { second: true },
  );
  const queue = `/exercises/${more.exerciseId}/rounds/1/second`;
  const names = (page: Page) => page.getByRole('rowheader').allTextContents();
  const press = async (key: string, leadsTo: RegExp) => {
    const from = second.url();
    await expect(second.locator('body')).toHaveAttribute('data-keys', 'on');
    await second.keyboard.press(key);
    await second.waitForURL((url) => url.href !== from && leadsTo.test(url.pathname));
  };
  try {
    await second.goto(queue);
    const order = await names(second);
    expect(order).toHaveLength(3);
    await second.getByRole('link', { name: 'Start the next second marking' }).click();
    await second.waitForURL(/\/critique\//);
    const skipped = second.url();
    await press('k', /^\/critique\//);
    await expect(second.getByText('this is the second marking', { exact: false })).toBeVisible();
    await press('G', /\/second$/);
    expect(await names(second)).toEqual([order[1], order[2], order[0]]);
    const last = second.getByRole('row').last();
    await expect(last).toContainText('Skipped by you');
    await expect(second.getByText('yours', { exact: true })).toHaveCount(0);
    await expect(second.getByText('may be taken')).toHaveCount(3);
    await sound(second);
    // For other markers they are unchanged, and none is claimed.
    await first.goto(queue);
    expect(await names(first)).toEqual(order);
    await expect(first.getByText('may be taken')).toHaveCount(3);
    // What was given back precedes what was skipped; the next but one, and only then the skipped one.
    await second.getByRole('link', { name: 'Start the next second marking' }).click();
    await second.waitForURL(/\/critique\//);
    await press('q', /^\/critique\//);
    expect(second.url()).not.toBe(skipped);
    await second.goto(queue);
    await second.getByRole('button', { name: 'Resume' }).click();
    await expect(second.getByText('Skipped by you')).toHaveCount(0);
    expect(await names(second)).toEqual(order);
  } finally {
    more.putAway();
  }
});

/** Gives every criterion its lowest or highest level, then finishes the proof. */
async function giveAll(page: Page, which: 'lowest' | 'highest'): Promise<void> {
  await expect(page.locator('body')).toHaveAttribute('data-keys', 'on');
  const criteria = page.locator('[data-criterion]');
  for (let index = 0; index < (await criteria.count()); index += 1) {
    const levels = criteria.nth(index).locator('button[aria-pressed]');
    const level = which === 'lowest' ? levels.first() : levels.last();
    await level.click();
    await expect(level).toHaveAttribute('aria-pressed', 'true');
  }
  await page.getByRole('button', { name: 'Finish marking' }).click();
  await expect(page.getByText('Marked. It is sent when the instructor releases', { exact: false })).toBeVisible();
}

/** Nothing for axe to find, no sideways scrolling at the width of a phone. */
async function sound(page: Page): Promise<void> {
  for (const size of [
    { width: 390, height: 844 },
    { width: 1280, height: 900 },
  ]) {
    await page.setViewportSize(size);
    expect((await axeOn(page)).map(({ id, nodes }) => `${id} ${nodes[0]?.html}`)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(size.width);
  }
}

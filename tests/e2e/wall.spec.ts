import { expect, test, type Browser, type Page } from '@playwright/test';
import { students } from '@/prisma/seed/people';
import { axeOn } from './axe';
import { demo, signedIn } from './people';
import { addExercise } from './wall-exercise';

/** The wall in class: a projector, two phones that aren't signed in, and two students who send while it is open. */
let exercise: ReturnType<typeof addExercise>;
let projector: Page;
let student: Page;
let other: Page;
let phones: [Page, Page];
let shortLink: string;

test.describe.configure({ mode: 'serial' });

test.beforeAll(async ({ browser, baseURL }) => {
  exercise = addExercise(baseURL!);
  projector = (await signedIn(browser, demo.instructor, { viewport: { width: 1920, height: 1080 } })).page;
  student = (await signedIn(browser, demo.student)).page;
  other = (await signedIn(browser, demo.other)).page;
  phones = [await phone(browser), await phone(browser)];
});
test.afterAll(() => exercise.remove());

const phone = async (browser: Browser) =>
  (await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true })).newPage();
const listening = () => expect(projector.locator('body')).toHaveAttribute('data-keys', 'on');
const drawn = (page: Page) => page.locator('canvas[data-drawn]');
const controls = async () => {
  await listening();
  if (!(await projector.getByText('Ways of looking, for all lines').isVisible())) await projector.keyboard.press('b');
};

async function sendProof(page: Page, why: string): Promise<void> {
  await page.goto(`${exercise.path}#send`);
  await page.getByLabel('Why is it set as it is?').fill(why);
  await page.getByRole('button', { name: 'Send the proof' }).click();
  await page.waitForURL(/\/proofs\//);
}

async function expectSound(page: Page): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    const violations = await axeOn(page);
    expect(
      violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`),
    ).toEqual([]);
    const { scroll, client } = await page.evaluate(() => ({
      scroll: document.documentElement.scrollWidth,
      client: document.documentElement.clientWidth,
    }));
    expect(scroll).toBeLessThanOrEqual(client);
  }
}

test('the instructor puts a line on the wall; its link opens on phones without signing in', async () => {
  await projector.goto(`${exercise.path}/rounds/1/wall`);
  await projector.getByRole('button', { name: 'Put on the wall' }).click();
  await projector.waitForURL(/\/wall\//);
  await expect(projector.getByText('Live', { exact: true })).toBeVisible();
  await expect(projector.getByText('This line hasn’t been sent yet.')).toBeVisible();
  await listening();
  await projector.keyboard.press('q');
  const address = await projector.getByRole('region', { name: 'Link for phones' }).getByRole('strong').innerText();
  shortLink = `/w/${address.split('/w/')[1]!}`;
  expect(shortLink).toMatch(/^\/w\/[BCDFGHJKMNPQRTVWXZ2346789]{5}-[BCDFGHJKMNPQRTVWXZ2346789]{5}$/);
  await expect(projector.getByRole('img', { name: /^QR code/ })).toBeVisible();
  await projector.keyboard.press('q');
  for (const one of phones) {
    await one.goto(shortLink.toLowerCase());
    await expect(one.getByText('No line is on the wall yet.')).toBeVisible();
  }
});

test('a proof that a student sends appears on wall and phones by itself, without a name', async () => {
  await sendProof(student, 'It looked even to me.');
  await expect(drawn(projector)).toHaveCount(1);
  await expect(projector.getByText(/^1 line\. 1 new line, placed last/)).toBeVisible();
  for (const one of phones)
    await expect(one.getByRole('group', { name: 'Gaps of this line' }).getByRole('radio').first()).toBeAttached();
  await projector.keyboard.press('e');
  await expect(projector.getByText(/^1 line\.$/)).toBeVisible();
  for (const page of [projector, ...phones]) {
    const source = await page.content();
    for (const { name, email } of students) for (const hidden of [name, email]) expect(source).not.toContain(hidden);
  }
  const answer = await (
    await projector.request.get(`/api${new URL(projector.url()).pathname.replace('/wall/', '/walls/')}`)
  ).text();
  expect(answer).not.toMatch(new RegExp(students.map(({ name }) => name).join('|')));
});

test('new lines can be held and placed together, and a line sent again is set anew where it hangs', async () => {
  await controls();
  await projector.getByLabel('Hold new lines until I place them').check();
  await sendProof(other, 'I opened the first gap.');
  await expect(projector.getByText('1 new line waiting.')).toBeVisible();
  await expect(drawn(projector)).toHaveCount(1);
  await projector.getByRole('button', { name: 'Place them' }).click();
  await expect(drawn(projector)).toHaveCount(2);
  const order = await projector
    .locator('[data-line]')
    .evaluateAll((lines) => lines.map((line) => line.getAttribute('data-line')));
  await sendProof(student, 'A second thought.');
  await expect(projector.locator('canvas[data-drawn="2"]')).toHaveCount(1);
  await expect(projector.getByText(/Updated: \w+\./)).toBeVisible();
  expect(
    await projector.locator('[data-line]').evaluateAll((lines) => lines.map((line) => line.getAttribute('data-line'))),
  ).toEqual(order);
  await projector.getByLabel('Hold new lines until I place them').uncheck();
});

test('two phones point, by finger and by keyboard; the wall shows it when it is asked for', async () => {
  const [first, second] = phones;
  const sign = await first.getByRole('combobox').inputValue();
  await second.getByRole('combobox').selectOption(sign);
  await first.getByRole('radio').nth(1).check({ force: true });
  await expect(first.getByText('Counted.')).toBeVisible();
  await second.getByRole('radio').nth(1).focus();
  await second.keyboard.press('Space');
  await expect(second.getByText('Counted.')).toBeVisible();
  await expect(projector.getByText('2 phones point; hidden until you show it.')).toBeVisible();
  await expect(projector.locator('svg circle')).toHaveCount(0);
  await projector.keyboard.press('v');
  await expect(projector.locator('svg circle')).toHaveCount(1);
  await expect(projector.locator('svg text', { hasText: '2' })).toBeVisible();

  await second.getByRole('button', { name: 'Remove my point' }).click();
  await expect(projector.locator('svg text', { hasText: '1' })).toBeVisible();
  await first.reload();
  await expect(first.getByRole('radio').nth(1)).toBeChecked();
});

test('what the room sees is kept as a note', async () => {
  await projector.getByRole('button', { name: /keep as a note…$/ }).click();
  await projector.getByLabel(/^Note for line/).fill('The room saw a hole here.');
  await projector.getByRole('button', { name: 'Keep the note' }).click();
  await expect(projector.getByText(/^.*Note kept at the gap between .* it goes out with the release\.$/)).toBeVisible();
});

test('ways of looking, one in front, two in turn, the median: by keys, which can be switched off', async () => {
  for (const [key, name] of [
    ['w', 'White between'],
    ['h', 'On its head'],
    ['o', 'Opposite ground'],
    ['i', 'Class median'],
  ] as const) {
    await projector.keyboard.press(key);
    await expect(projector.getByRole('button', { name: new RegExp(`^${name}`) })).toHaveAttribute(
      'aria-pressed',
      'true',
    );
  }
  await expect(
    projector.getByText('Dashed: for each pair the median of 2 lines on the wall. It is no one person’s spacing.'),
  ).toBeVisible();
  await expectSound(projector);
  for (const key of ['w', 'h', 'o', 'i']) await projector.keyboard.press(key);

  await projector.keyboard.press('n');
  await projector.keyboard.press('1');
  await projector.keyboard.press('u');
  await expect(drawn(projector)).toHaveCount(1);
  await expect(phones[0].getByRole('button', { name: 'Next line' })).toHaveCount(0);
  await projector.keyboard.press('u');
  await expect(drawn(projector)).toHaveCount(2);
  await projector.keyboard.press('n');
  await projector.keyboard.press('2');
  await projector.keyboard.press('a');
  await expect(projector.getByText(/each for 2 s$/)).toBeVisible();
  await projector.emulateMedia({ reducedMotion: 'reduce' });
  await expect(projector.getByText(/your system asks for less motion$/)).toBeVisible();
  await projector.emulateMedia({ reducedMotion: 'no-preference' });
  await projector.keyboard.press('a');

  await projector.getByLabel('Single keys work on this page').uncheck();
  await projector.keyboard.press('w');
  await expect(projector.getByRole('button', { name: /^White between/ })).toHaveAttribute('aria-pressed', 'false');
  await projector.getByLabel('Single keys work on this page').check();
});

test('a student’s line is left out of wall and phones, and put back', async () => {
  await projector.locator('button[aria-label^="Line "]').first().click();
  await projector.getByRole('button', { name: /^Leave chosen out/ }).click();
  await expect(drawn(projector)).toHaveCount(1);
  await expect(phones[0].getByRole('button', { name: 'Next line' })).toHaveCount(0);
  await projector.getByText(/^Which lines hang here \(1 of 2\)$/).click();
  await projector
    .getByRole('group')
    .filter({ hasText: 'None, to choose a few' })
    .getByRole('checkbox', { checked: false })
    .last()
    .click();
  await expect(drawn(projector)).toHaveCount(2);
});

test('nothing for axe to find, in light and dark, on projectors and a phone', async () => {
  for (const size of [
    { width: 1920, height: 1080 },
    { width: 1024, height: 768 },
    { width: 390, height: 844 },
  ]) {
    await projector.setViewportSize(size);
    await expectSound(projector);
  }
  await expectSound(phones[0]);
  await projector.setViewportSize({ width: 1920, height: 1080 });
});

test('where a proxy lets no events through, the page asks and says so', async () => {
  await projector.route('**/live', (route) => route.abort());
  await projector.reload();
  await expect(projector.getByText('Not live: asks every 3 seconds')).toBeVisible();
  await sendProof(other, 'Once more.');
  await expect(projector.locator('canvas[data-drawn="2"]')).toHaveCount(2);
  await projector.unroute('**/live');
});

test('closing the wall ends its link at once', async () => {
  await projector.reload();
  await controls();
  await projector.getByRole('button', { name: 'Close the wall and end its link' }).click();
  await projector.waitForURL(/\/rounds\/1\/wall$/);
  for (const one of phones) {
    await expect(one.getByText('The wall is closed.')).toBeVisible();
    expect((await one.goto(shortLink))?.status()).toBe(404);
  }
});

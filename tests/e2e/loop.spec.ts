import { expect, test, type Page } from '@playwright/test';
import { buildPack } from '@/lib/face/build-pack';
import { measureLine } from '@/shared/measure';
import { perMille, signed } from '@/shared/text/number';
import { demo, signedIn } from './people';
import { browserPairValue } from './browser-pair-value';
import { harfbuzzPairValue } from './harfbuzz-pair-value';

/**
 * The whole loop, by three people in three browsers, in the demo's course: an exercise planned, a reference set, lines
 * spaced, a proof sent and critiqued, released, answered, and taken up again in the next round.
 * The line is our own; its numbers on screen are held against the core, against HarfBuzz and against the browser's layout.
 */
const line = 'TAVERN';
const face = { key: 'lato-700', file: '@fontsource/lato/files/lato-latin-700-normal.woff2', family: 'Lato', style: 'Bold' };
const saved = 'All changes are saved.';

test.describe.configure({ mode: 'serial' });

let teacher: Page;
let marker: Page;
let student: Page;
let exercise: string;

test.beforeAll(async ({ browser }) => {
  [teacher, marker, student] = await Promise.all([demo.instructor, demo.assistant, demo.student].map(async (who) => (await signedIn(browser, who)).page)) as [Page, Page, Page];
});

test('the instructor plans an exercise with a line, two rounds and a criterion', async () => {
  await teacher.goto('/courses');
  await teacher.getByRole('link', { name: 'Lettering for display' }).click();
  await teacher.getByRole('link', { name: 'Plan an exercise' }).first().click();
  await teacher.getByLabel('Title').fill('An inn sign');
  await teacher.getByLabel('Brief').fill('One word over a door. Let it hold together from across the street.');
  await teacher.getByRole('button', { name: 'Begin the draft' }).click();
  await teacher.waitForURL(/\/exercises\/[^/]+\/plan/);
  exercise = new URL(teacher.url()).pathname.replace('/plan', '');

  await teacher.getByRole('link', { name: 'Add specimens' }).first().click();
  await teacher.getByLabel('Lines').fill(line);
  await teacher.getByText(face.family, { exact: false }).locator('visible=true').first().click();
  await teacher.getByRole('checkbox', { name: face.style, exact: true }).locator('visible=true').check();
  await teacher.getByLabel('Sizes').fill('96 px');
  await expect(teacher.getByRole('status').filter({ hasText: '= 1 specimen' })).toBeVisible();
  await teacher.getByRole('button', { name: 'Make the specimens' }).click();
  await expect(teacher.getByText('1 specimen made')).toBeVisible();

  for (const name of ['First look', 'After critique']) {
    await teacher.goto(`${exercise}/plan`);
    await teacher.getByRole('link', { name: 'Add a round' }).click();
    await teacher.getByLabel('Name').fill(name);
    await teacher.getByRole('button', { name: 'Add the round' }).click();
    await expect(teacher.getByRole('link', { name: new RegExp(name) })).toBeVisible();
  }
  await teacher.getByRole('link', { name: 'Add a criterion' }).click();
  await teacher.getByLabel('Name').fill('Evenness');
  await teacher.getByRole('button', { name: 'Add the criterion' }).click();
  await expect(teacher.getByRole('link', { name: 'Evenness' })).toBeVisible();
});

test('the instructor sets a reference on the bench and publishes', async () => {
  await teacher.goto(`${exercise}/references`);
  await teacher.getByRole('link', { name: /Set|reference/ }).and(teacher.locator(`a[href*="${exercise}/references/"]`)).first().click();
  await setOffsets(teacher, [-20, -10, 0, 0, 5]);
  await expect(teacher.getByText(saved)).toBeVisible();
  await teacher.goto(`${exercise}/plan/publish`);
  await teacher.getByRole('button', { name: 'Publish to the course' }).click();
  await teacher.waitForURL((url) => !url.pathname.endsWith('/publish'));
});

test('the student spaces the line by keyboard, sees true numbers, and sends a proof', async () => {
  await student.goto('/courses');
  await student.getByRole('link', { name: 'Lettering for display' }).click();
  await student.locator(`a[href="${exercise}"]`).first().click();
  await expect(student.getByText('As the face comes')).toBeVisible();
  await student.getByRole('link', { name: 'Begin with the first line' }).click();
  await student.getByRole('button', { name: 'Leave the guide' }).click();

  // Built-in: the bench, the core, HarfBuzz and this browser agree on T and A.
  const pack = await buildPack({ kind: 'catalogue', key: face.key }, line);
  const builtIn = Math.round((pack.builtIn[0]! * 1000) / pack.unitsPerEm);
  await expect(student.getByText(`Built-in ${perMille(builtIn)}`)).toBeVisible();
  const exact = (pack.builtIn[0]! * 1000) / pack.unitsPerEm;
  expect(await harfbuzzPairValue(face.file, 'T', 'A')).toBe(exact);
  expect(Math.abs((await browserPairValue(student, face.file, 'T', 'A')) - exact)).toBeLessThan(1);

  await setOffsets(student, [40, -10, 0, 0, 0]);
  await expect(student.getByText(saved)).toBeVisible();
  await student.reload();
  await expect(student.getByRole('slider', { name: 'gap between capital T and capital A' })).toHaveAttribute('aria-valuetext', new RegExp(`^offset plus 40, total ${builtIn + 40 < 0 ? 'minus' : 'plus'} ${Math.abs(builtIn + 40)}`));

  await student.goto(`${exercise}#send`);
  await student.getByRole('button', { name: 'Send the proof' }).click();
  await expect(student.getByText(/in one sentence/).first()).toBeVisible();
  await student.getByLabel('Why is it set as it is?').fill('I kept the T away from the A so that they would not collide.');
  await student.getByRole('button', { name: 'Send the proof' }).click();
  await student.waitForURL(/\/proofs\//);
  await expect(student.getByText('Received', { exact: true }).first()).toBeVisible();
  await expect(student.getByText(/UTC[+−]\d/).first()).toBeVisible();
});

test('the assistant looks first, then asks for the deviations, and the numbers are the core’s', async () => {
  await marker.goto(`${exercise}/rounds/1/critique`);
  await marker.locator('a[href^="/critique/"]').first().click();
  await expect(marker.getByRole('table')).toHaveCount(0);
  await marker.keyboard.press('d');
  const row = marker.getByRole('row').filter({ hasText: 'TA' });
  const pack = await buildPack({ kind: 'catalogue', key: face.key }, line);
  const { pairs } = measureLine(pack, { tracking: 0, offsets: [40, -10, 0, 0, 0] }, { size: { value: 96, unit: 'px' }, ground: 'light' });
  await expect(row.getByRole('cell').nth(0)).toHaveText(signed(40));
  await expect(row.getByRole('cell').nth(1)).toHaveText(perMille(Math.round(pairs[0]!.apparentGap)));
});

/** Sets the offsets of a bench by keyboard: a number for each gap, Enter, and on. */
async function setOffsets(page: Page, offsets: readonly number[]): Promise<void> {
  await page.getByRole('slider').first().focus();
  await page.keyboard.press('Home');
  for (const [index, offset] of offsets.entries()) {
    if (index > 0) await page.keyboard.press('Enter');
    if (offset === 0) continue;
    await page.keyboard.type(String(offset));
    await page.keyboard.press('Enter');
  }
}

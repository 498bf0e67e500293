import { expect, test } from '@playwright/test';
import { axeOn } from './axe';
import { instructor, signIn } from './demo-people';
import { ownExercise } from './own-exercise';

test.setTimeout(180_000);

for (const width of [1280, 390])
  test(`an instructor finds words for AV and adds one as a line, ${width} px`, async ({ browser, baseURL }) => {
    const own = ownExercise(baseURL!, `Words for a gate, ${width}`, []);
    const page = await (await browser.newContext({ viewport: { width, height: 720 } })).newPage();
    try {
      await signIn(page, instructor);
      await page.goto(`/exercises/${own.exerciseId}/plan`);
      await page.getByRole('link', { name: 'Find words' }).click();

      // By keyboard: type the pair, choose the face, and send the form with Enter.
      const pairs = page.getByRole('textbox', { name: /^Pairs/ });
      await pairs.fill('AV');
      await page.getByRole('combobox', { name: 'Face' }).selectOption('libre-baskerville-400');
      await pairs.press('Enter');
      await expect(page.getByRole('heading', { name: 'Found' })).toBeVisible({ timeout: 60_000 });
      const lines = page.getByRole('form', { name: /^Add “/ });
      await expect(lines).toHaveCount(24);
      for (const name of await lines.evaluateAll((forms) => forms.map((form) => form.getAttribute('aria-label')!)))
        expect(name).toMatch(/AV/);
      expect(await axeOn(page)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);

      const first = lines.first();
      const text = /“(.+)”/.exec((await first.getAttribute('aria-label'))!)![1]!;
      await first.getByRole('button').press('Enter');
      await expect(first.getByText('Added at the end of the exercise’s lines.')).toBeVisible();
      await page.goto(`/exercises/${own.exerciseId}/plan`);
      await expect(page.getByRole('link', { name: new RegExp(`\\d+\\. “${text}”`) })).toBeVisible();
      await expect(
        page.getByRole('figure', { name: new RegExp(`“${text}”, Libre Baskerville Regular, 72\\spx`) }),
      ).toBeVisible();
    } finally {
      own.putAway();
      await page.context().close();
    }
  });

test('words are found without JavaScript, by lesson', async ({ browser, baseURL }) => {
  const own = ownExercise(baseURL!, 'Words without scripts', []);
  const page = await (await browser.newContext({ javaScriptEnabled: false })).newPage();
  try {
    await signIn(page, instructor);
    await page.goto(`/exercises/${own.exerciseId}/plan/specimens/find`);
    await page.getByRole('link', { name: 'Letters that close up' }).click();
    await expect(page.getByText(/May be read as “/).first()).toBeVisible({ timeout: 60_000 });
    await page
      .getByRole('button', { name: /^Add “/ })
      .first()
      .click();
    await expect(page.getByText('Added at the end of the exercise’s lines.')).toBeVisible();
  } finally {
    own.putAway();
    await page.context().close();
  }
});

import { expect, test } from '@playwright/test';
import { axeOn } from './axe';
import { bram, ines, instructor } from './demo-people';
import { ownCourse } from './own-course';
import { signedIn } from './people';

test.setTimeout(240_000);

let putAway = () => {};
test.afterAll(() => putAway());

test('a line that begins wrong: set by the instructor, repaired on the bench, and shown with the proof', async ({
  browser,
  baseURL,
}) => {
  const course = ownCourse(baseURL!, 'Lines that teach', [
    { ...instructor, role: 'instructor' },
    { ...ines, role: 'student' },
    { ...bram, role: 'student' },
  ]);
  putAway = course.putAway;
  const exercise = `/exercises/${course.exerciseId}`;
  const [specimenId] = course.specimenIds;

  const { page, context } = await signedIn(browser, instructor, { viewport: { width: 390, height: 800 } });
  await page.goto(`${exercise}/plan/specimens/${specimenId}`);
  await page.getByRole('radio', { name: /^One gap off/ }).check();
  await page.getByRole('textbox', { name: /^Amount/ }).fill('900');
  await page.getByRole('button', { name: 'Save what students begin from' }).click();
  await expect(page.getByRole('form', { name: 'What students begin from' })).toContainText('at most 400/1000 em');
  await expect(page.getByRole('radio', { name: /^One gap off/ })).toBeChecked();
  await page.getByRole('textbox', { name: /^Amount/ }).fill('40');
  await page.getByRole('textbox', { name: /^Amount/ }).press('Enter');
  await expect(page.locator('#start')).toContainText('Students will begin from this: one gap off');
  await expect(page.getByRole('radio', { name: /^One gap off/ })).toBeChecked();
  expect((await axeOn(page)).map(({ id }) => id)).toEqual([]);

  const student = await signedIn(browser, ines);
  await student.page.goto(exercise);
  await expect(student.page.getByRole('main')).toContainText('Untouched: it begins wrong on purpose');
  await student.page.goto(`${exercise}/bench/${specimenId}`);
  // The guided line comes once, before the first bench.
  const leave = student.page.getByRole('button', { name: 'Leave the guide' });
  await expect(leave.or(student.page.getByRole('region', { name: 'Chosen gap' })).first()).toBeVisible();
  if (await leave.isVisible()) await leave.click();
  const gap = student.page.getByRole('region', { name: 'Chosen gap' });
  const back = gap.getByRole('button', { name: 'Back to how it began' });
  await expect(back).toBeDisabled();
  await gap.getByRole('button', { name: '5 closer', exact: true }).first().click();
  await expect(back).toBeEnabled();
  await back.click();
  await expect(back).toBeDisabled();
  await expect(student.page.getByRole('button', { name: 'Whole line back to how it began' })).toBeDisabled();
  await gap.getByRole('button', { name: '5 closer', exact: true }).first().click();
  await expect(student.page.getByText('All changes are saved.')).toBeVisible();
  await student.page.goto(exercise);
  await expect(student.page.getByRole('main')).not.toContainText('it begins wrong on purpose');
  await student.page.getByLabel('Why is it set as it is?').fill('I closed the one gap that was off.');
  await student.page.getByRole('button', { name: 'Send the proof' }).click();
  await student.page.waitForURL(/\/proofs\//);
  await expect(student.page.getByRole('main')).toContainText('the outlines under it are what the line began from');
  expect((await axeOn(student.page)).map(({ id }) => id)).toEqual([]);
  await Promise.all([context, student.context].map((each) => each.close()));
});

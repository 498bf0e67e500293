import { expect, test } from '@playwright/test';
import { axeOn } from './axe';
import { bram as other, ines as student, instructor } from './demo-people';
import { signedIn } from './people';
import { ownCourse } from './own-course';

test.setTimeout(240_000);

const day = 86_400_000;
const begun = Date.now();
const local = (days: number) => new Date(begun + days * day).toISOString().slice(0, 16);
let putAway = () => {};
test.afterAll(() => putAway());

test('two sections have their own dates: by the instructor’s form, each student’s page, marking and a calendar', async ({
  browser,
  baseURL,
}) => {
  const course = ownCourse(baseURL!, 'Two sections', [
    { ...instructor, role: 'instructor' },
    { ...student, role: 'student' },
    { ...other, role: 'student' },
  ]);
  putAway = course.putAway;
  course.run(
    "INSERT INTO Section (id, courseId, name, createdAt) VALUES ('evening-section', ?, 'Evening', ?)",
    course.courseId,
    new Date().toISOString(),
  );
  course.run("UPDATE Member SET sectionId = 'evening-section' WHERE id = ?", course.members.get(other.email));
  const exercise = `/exercises/${course.exerciseId}`;

  const { page, context } = await signedIn(browser, instructor, { viewport: { width: 390, height: 800 } });
  await page.goto(`${exercise}/plan/rounds/${course.roundId}`);
  await page.getByRole('link', { name: 'Evening' }).click();
  await expect(page.getByRole('form', { name: 'Dates for Evening' })).toBeVisible();
  await page.getByLabel('Due').fill(local(20));
  await page.getByLabel('Due').press('Enter');
  await expect(page).toHaveURL(/#sections$/);
  // Due before it opens: said at the field, and what was typed stays.
  await page.getByRole('link', { name: 'Early' }).click();
  await expect(page.getByRole('form', { name: 'Dates for Early' })).toBeVisible();
  await page.getByLabel('Due').fill(local(-30));
  await page.getByRole('button', { name: 'Save the dates' }).click();
  await expect(page.getByRole('form', { name: 'Dates for Early' })).toContainText('before it opens');
  await expect(page.getByLabel('Due')).toHaveValue(local(-30));
  expect((await axeOn(page)).map(({ id }) => id)).toEqual([]);
  await page.getByLabel('Due').fill(local(-1));
  await page.getByRole('button', { name: 'Save the dates' }).click();
  await expect(page).toHaveURL(/#sections$/);
  await expect(page.locator('#sections time')).toHaveCount(2);
  expect((await axeOn(page)).map(({ id }) => id)).toEqual([]);
  await page.setViewportSize({ width: 1280, height: 900 });
  await page.goto(`${exercise}/plan`);
  await expect(page.locator('#rounds')).toContainText('Evening: due');
  await page.goto(`/courses/${course.courseId}`);
  await expect(page.getByRole('main')).toContainText('Early: due');

  // Each student sees their own date and not the other section's; one who is elsewhere also their own time.
  const elsewhere = await signedIn(browser, student, { timezoneId: 'America/New_York' });
  await elsewhere.page.goto(exercise);
  await expect(elsewhere.page.getByRole('main')).toContainText('for you');
  await expect(elsewhere.page.getByRole('main')).not.toContainText('Evening');
  const dueFor = async (one: typeof page) =>
    one
      .getByRole('main')
      .locator('time')
      .evaluateAll((times) => times.map((time) => time.getAttribute('datetime')));
  expect(await dueFor(elsewhere.page)).toContain(`${local(-1)}:00.000Z`);
  const inEvening = await signedIn(browser, other);
  await inEvening.page.goto(exercise);
  expect(await dueFor(inEvening.page)).toContain(`${local(20)}:00.000Z`);
  expect(await dueFor(inEvening.page)).not.toContain(`${local(-1)}:00.000Z`);

  // Marking begins for Early alone, then release is looked at by section.
  await page.goto(`${exercise}/rounds/1/critique`);
  await page.getByRole('button', { name: 'Begin marking Early' }).click();
  await expect(page.getByRole('main')).toContainText('marking began');
  await expect(page.getByRole('button', { name: 'Begin marking Evening' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Begin marking everyone else' })).toBeVisible();
  expect((await axeOn(page)).map(({ id }) => id)).toEqual([]);
  await page.goto(`${exercise}/rounds/1/release`);
  await page.getByRole('link', { name: /^Evening/ }).click();
  await expect(page.getByRole('checkbox')).toHaveCount(1);

  // The calendar: one address, shown once, which says 304 to who has it already, and ends when it is revoked.
  await inEvening.page.goto('/account');
  await inEvening.page.getByRole('button', { name: 'Make an address' }).click();
  const address = await inEvening.page.getByLabel('The address').inputValue();
  expect((await axeOn(inEvening.page)).map(({ id }) => id)).toEqual([]);
  const stranger = await browser.newContext();
  const first = await stranger.request.get(address);
  expect(first.headers()).toMatchObject({
    'content-type': 'text/calendar; charset=utf-8',
    'cache-control': 'private, no-cache',
  });
  const text = await first.text();
  const stamp = `${local(20).replaceAll(/[-:]/g, '')}00Z`;
  expect(text).toContain(`DTSTART:${stamp}`);
  expect(text).not.toContain(other.name);
  const etag = first.headers().etag!;
  expect((await stranger.request.get(address, { headers: { 'if-none-match': etag } })).status()).toBe(304);
  await inEvening.page.reload();
  await inEvening.page.getByRole('button', { name: 'Revoke the address' }).click();
  await expect(inEvening.page.getByRole('button', { name: 'Make an address' })).toBeVisible();
  expect((await stranger.request.get(address)).status()).toBe(404);
  await Promise.all([context, elsewhere.context, inEvening.context, stranger].map((each) => each.close()));
});

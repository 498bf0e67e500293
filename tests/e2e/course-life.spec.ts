import { expect, test, type Page } from '@playwright/test';
import { assistant, instructor, students } from '@/prisma/seed/people';
import { axeOn } from './axe';
import { ownCourse } from './own-course';
import { signedIn } from './people';

/**
 * A course of the tests' own: what is different for one student, its copy for the next term, and the end of its
 * retention.
 */
test.describe.configure({ mode: 'serial' });

const [author, other] = [students[6]!, students[7]!];
let own: ReturnType<typeof ownCourse>;
let instructorPage: Page, marker: Page, student: Page;
let course: string;
const copies: string[] = [];

test.beforeAll(async ({ browser, baseURL }) => {
  own = ownCourse(baseURL!, 'Signs for a quay', [instructor, assistant, author, other]);
  course = `/courses/${own.courseId}`;
  [instructorPage, marker, student] = (await Promise.all(
    [instructor, assistant, author].map(async (who) => (await signedIn(browser, who)).page),
  )) as [Page, Page, Page];
});
test.afterAll(() => own.putAway(copies));

const sound = async (page: Page) =>
  expect((await axeOn(page)).map(({ id, nodes }) => `${id}: ${nodes[0]?.target}`)).toEqual([]);
const statusOf = async (page: Page, path: string) => (await page.request.get(path, { maxRedirects: 0 })).status();

/**
 * What the student's bench shows for the chosen gap, and how far apart the first two sliders are, which follows the size
 * of the letters exactly. (Their width does so only for large letters: none is narrower than 24 px.)
 */
async function bench(): Promise<{ told: boolean; slider: number; keys: boolean }> {
  await student.goto(`/exercises/${own.exerciseId}/bench/${own.specimenIds[0]}`);
  const leave = student.getByRole('button', { name: 'Leave the guide' });
  const sliders = student.getByRole('slider', { name: /^gap between/, includeHidden: true });
  const [slider, next] = [sliders.first(), sliders.nth(1)];
  await expect(leave.or(slider).first()).toBeVisible();
  if (await leave.isVisible()) await leave.click();
  // Its width is set when the line has been drawn.
  await expect(slider).toHaveAttribute('style', /width/);
  await expect(next).toHaveAttribute('style', /width/);
  await expect(slider).toHaveAttribute('aria-valuetext', /^offset/);
  await student.getByRole('button', { name: 'Keys' }).click();
  return {
    told: /rest of the line|hold it against/.test((await slider.getAttribute('aria-valuetext'))!),
    slider: (await next.boundingBox())!.x - (await slider.boundingBox())!.x,
    keys: await student.getByLabel('Use single keys').isChecked(),
  };
}

test('what is different for a student is set by the instructor, and is so on that student’s bench alone', async () => {
  const before = await bench();
  expect(before).toMatchObject({ told: false, keys: true });
  await expect(student.locator(`time[datetime="${own.dueAt}"]`)).toBeVisible();

  const person = `${course}/people/${own.members.get(author.email)}`;
  await instructorPage.goto(person);
  await instructorPage.getByLabel('More time').fill('50');
  await instructorPage.getByLabel('Working view').selectOption({ label: 'Twice' });
  await instructorPage.getByLabel('What the bench tells').selectOption({ label: 'Everything' });
  await instructorPage.getByLabel('The bench starts with single-key shortcuts off').check();
  await instructorPage.getByRole('form', { name: 'Accommodations' }).getByRole('button', { name: 'Save' }).click();
  await expect(instructorPage.getByText('Saved. It holds from the next time they open an exercise.')).toBeVisible();

  const after = await bench();
  expect(after).toMatchObject({ told: true, keys: false });
  expect(after.slider / before.slider).toBeCloseTo(2, 1);
  await expect(student.locator(`time[datetime="${own.dueWithMore(50)}"]`)).toBeVisible();

  // The assistant sees the time and no more, and may not open the page on which it is set; nor may the student.
  await marker.goto(`${course}/people`);
  await expect(
    marker.getByRole('row', { name: author.name }).getByRole('cell', { name: '50% more time', exact: true }),
  ).toBeVisible();
  await expect(marker.getByRole('row', { name: other.name })).not.toContainText('more time');
  for (const page of [marker, student]) expect(await statusOf(page, person)).toBe(404);

  await instructorPage.goto(person);
  await expect(instructorPage.getByLabel('More time')).toHaveValue('50');
  await instructorPage.getByLabel('More time').fill('0');
  await instructorPage.getByLabel('Working view').selectOption({ label: 'As for everyone' });
  await instructorPage.getByLabel('What the bench tells').selectOption({ label: 'As the exercise says' });
  await instructorPage.getByLabel('The bench starts with single-key shortcuts off').uncheck();
  await instructorPage.getByRole('form', { name: 'Accommodations' }).getByRole('button', { name: 'Save' }).click();
  await expect(instructorPage.getByText('Saved. It holds from the next time they open an exercise.')).toBeVisible();
  expect(await bench()).toMatchObject(before);
  await expect(student.locator(`time[datetime="${own.dueAt}"]`)).toBeVisible();
});

test('an instructor makes the copy of a course, with what was planned and without people; nobody else can', async () => {
  for (const page of [marker, student]) expect(await statusOf(page, `${course}/copy`)).toBe(404);
  await instructorPage.goto(`${course}/copy?dates=moved&weeks=26`);
  await expect(instructorPage.getByText('1 exercise, each as a draft', { exact: false })).toBeVisible();
  await instructorPage.getByLabel('Title').fill('Signs for a quay, next term');
  await instructorPage.getByRole('button', { name: 'Create the copy' }).click();
  await instructorPage.waitForURL(
    (url) => /^\/courses\/[^/]+$/.test(url.pathname) && !url.pathname.endsWith(own.courseId),
  );
  const copy = new URL(instructorPage.url()).pathname;
  copies.push(copy.split('/').at(-1)!);
  await expect(instructorPage.getByText('2 lines · being planned, students don’t see it')).toBeVisible();
  await instructorPage.getByRole('link', { name: 'Lines of Signs for a quay' }).click();
  await expect(instructorPage.getByRole('heading', { level: 1, name: 'Lines of Signs for a quay' })).toBeVisible();
  await expect(instructorPage.getByRole('img')).toHaveCount(2);

  await instructorPage.goto(`${copy}/people`);
  await expect(instructorPage.getByText(instructor.name).first()).toBeVisible();
  const everything = await instructorPage.content();
  for (const { name, email } of [assistant, author, other])
    for (const hidden of [name, email]) expect(everything).not.toContain(hidden);
  await instructorPage.goto(`${copy}/settings`);
  await expect(instructorPage.getByText('Early', { exact: true })).toHaveCount(0);
  for (const page of [marker, student]) {
    expect(await statusOf(page, copy)).toBe(404);
    await page.goto('/courses');
    await expect(page.getByRole('link', { name: 'Signs for a quay', exact: true })).toBeVisible();
    await expect(page.getByRole('link', { name: 'Signs for a quay, next term' })).toHaveCount(0);
  }
});

test('the retention of a course ends once its day is past, when its title is written, and names no student any more', async () => {
  for (const page of [marker, student]) expect(await statusOf(page, `${course}/retention`)).toBe(404);
  // Letters that were sent earlier link to the page's old address.
  await instructorPage.goto(`${course}/keeping`);
  await expect(instructorPage).toHaveURL(/\/retention$/);
  await expect(instructorPage.getByText('No day has been set', { exact: false })).toBeVisible();
  const end = instructorPage.getByRole('button', { name: 'End retention' });
  await expect(end).toHaveCount(0);
  await instructorPage.goto(`${course}/settings`);
  await instructorPage.getByLabel('Work is kept until').fill('2026-01-31');
  const settings = instructorPage.getByRole('form', { name: 'The course' });
  await settings.getByRole('button', { name: 'Save' }).click();
  await expect(settings.getByText('Saved.')).toBeVisible();
  await instructorPage.goto(course);
  await instructorPage.getByRole('link', { name: 'What that means' }).click();
  await expect(
    instructorPage.getByText('The work was to be kept until 2026-01-31, and that day is past.', { exact: false }),
  ).toBeVisible();
  await expect(instructorPage.getByText('to confirm this for 2 students.', { exact: false })).toBeVisible();
  await sound(instructorPage);

  const title = instructorPage.getByLabel('Write the title of the course');
  await title.fill('Signs');
  await end.click();
  await expect(
    instructorPage
      .getByText('This is not the title of the course, which is “Signs for a quay” (given: “Signs”).')
      .first(),
  ).toBeVisible();
  expect(await statusOf(student, course)).toBe(200);
  await title.fill('Signs for a quay');
  await end.click();
  await expect(instructorPage.getByText('The course names no student any more.')).toBeVisible();
  await expect(end).toHaveCount(0);

  // The student is out of this course and still in the other one.
  await student.goto('/courses');
  await expect(student.getByRole('link', { name: 'Lettering for display' })).toBeVisible();
  await expect(student.getByRole('link', { name: 'Signs for a quay' })).toHaveCount(0);
  for (const path of [course, `/exercises/${own.exerciseId}`, `/proofs/${own.proofIds[0]}`])
    expect(await statusOf(student, path)).toBe(404);
  // Those who teach still have the spacings, and of the students neither names nor words.
  for (const [page, path] of [
    [instructorPage, `${course}/people`],
    [instructorPage, `${course}/class`],
    [marker, `/exercises/${own.exerciseId}/rounds/1/critique`],
    [marker, `/critique/${own.proofIds[0]}/${own.specimenIds[0]}`],
  ] as const) {
    const answer = await page.goto(path);
    expect(`${path} ${answer?.status()}`).toBe(`${path} 200`);
    const text = await page.content();
    for (const hidden of [author.name, author.email, other.name, other.email, 'goes when retention ends'])
      expect(text.includes(hidden), `${path} ${hidden}`).toBe(false);
  }
  await expect(marker.locator('.line-drawing').first()).toBeVisible();
  await instructorPage.goto(`${course}/settings`);
  await instructorPage.getByText(/^The newest \d+$/).click();
  await expect(
    instructorPage.getByRole('listitem').filter({ hasText: `retention ended, by ${instructor.name}` }),
  ).toBeVisible();
});

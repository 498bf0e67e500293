import { expect, test, type Page } from '@playwright/test';
import { assistant, instructor, secondAssistant, students } from '@/prisma/seed/people';
import { ownCourse } from './own-course';
import { signedIn } from './people';

/**
 * A round of a course of the tests' own: sections, equal settings, shared stock notes, a late proof's marks, a
 * correction, the log.
 */
test.describe.configure({ mode: 'serial' });

const [author, other] = [students[8]!, students[9]!];
const reason = 'Seen again on its head.';
let own: ReturnType<typeof ownCourse>;
let instructorPage: Page, marker: Page, second: Page, student: Page;
let round: string, desk: string;

test.beforeAll(async ({ browser, baseURL }) => {
  own = ownCourse(baseURL!, 'Plates for a tram', [instructor, assistant, secondAssistant, author, other]);
  round = `/exercises/${own.exerciseId}/rounds/1`;
  desk = `/critique/${own.proofIds[0]}/${own.specimenIds[0]}`;
  // Received 33 hours after the due instant, where five per cent are taken for each begun day: ten.
  own.run(
    `UPDATE Round SET state = 'marking', markingStartedAt = ?, opensAt = NULL, opensLocal = NULL, dueAt = '2026-01-04T00:00:00.000Z', dueLocal = '2026-01-04T00:00', lateRule = '{"accept":"always","untilLocal":null,"untilAt":null,"deductPerDay":5}' WHERE id = ?`,
    new Date().toISOString(),
    own.roundId,
  );
  own.run(
    "UPDATE CriterionVersion SET basis = 'evenness' WHERE basis = 'distance' AND criterionId IN (SELECT id FROM Criterion WHERE exerciseId = ?)",
    own.exerciseId,
  );
  own.run('UPDATE Member SET sectionId = NULL WHERE id = ?', own.members.get(other.email));
  // One of the two has the other's setting of each line.
  own.run(
    'UPDATE ProofItem SET (tracking, offsets) = (SELECT one.tracking, one.offsets FROM ProofItem one WHERE one.proofId = ? AND one.specimenVersionId = ProofItem.specimenVersionId) WHERE proofId = ?',
    own.proofIds[0],
    own.proofIds[1],
  );
  [instructorPage, marker, second, student] = (await Promise.all(
    [instructor, assistant, secondAssistant, author].map(async (who) => (await signedIn(browser, who)).page),
  )) as [Page, Page, Page, Page];
});
test.afterAll(() => own.putAway());

const statusOf = async (page: Page, path: string) => (await page.request.get(path, { maxRedirects: 0 })).status();
const criteria = (page: Page) => page.locator('[data-criterion]');
const levels = (page: Page, place: number) => criteria(page).nth(place).locator('button[aria-pressed]');

async function atTheDesk(page: Page): Promise<void> {
  await page.goto(desk);
  await expect(page.locator('body')).toHaveAttribute('data-keys', 'on');
}

test('a marker goes by section, and settings that are equal in every number are told as a fact', async () => {
  await marker.goto(`${round}/critique`);
  const names = () => marker.getByRole('rowheader').allTextContents();
  expect((await names()).toSorted()).toEqual([author.name, other.name].toSorted());
  await marker
    .getByRole('navigation', { name: 'Sections' })
    .getByRole('link', { name: /^Early/ })
    .click();
  await marker.waitForURL(/section=/);
  expect(await names()).toEqual([author.name]);
  await marker.goto(`${round}/specimens/${own.specimenIds[0]}`);
  const equal = marker.getByRole('region', { name: 'Identical spacings' });
  await expect(equal.getByRole('listitem')).toHaveText([
    new RegExp(`${author.name}.*${other.name}|${other.name}.*${author.name}`),
  ]);
  await expect(equal).toContainText('That proves nothing');
  for (const path of [`${round}/critique`, `${round}/specimens/${own.specimenIds[0]}`, desk])
    expect(await statusOf(student, path)).toBe(404);
});

test('a stock note that is shared is there for all markers of the course, and is dropped by whose it is', async () => {
  await atTheDesk(marker);
  await marker.getByLabel(/^Note on/).fill('Hold {pair} against the stems beside it.');
  const stock = (page: Page) =>
    page
      .getByRole('region', { name: 'Stock notes' })
      .getByRole('listitem')
      .filter({ hasText: 'against the stems beside it' });
  await marker.getByLabel('for all markers of the course').check();
  await marker.getByRole('button', { name: 'Keep what is typed as a stock note' }).click();
  await expect(stock(marker).getByRole('button', { name: /^Drop/ })).toHaveText('Drop, for all markers');
  await marker.getByLabel(/^Note on/).fill('');
  await atTheDesk(second);
  await expect(stock(second)).toHaveCount(1);
  await expect(stock(second).getByRole('button', { name: /^Drop/ })).toHaveCount(0);
  await stock(marker).getByRole('button', { name: /^Drop/ }).click();
  await expect(stock(marker)).toHaveCount(0);
  await atTheDesk(second);
  await expect(stock(second)).toHaveCount(0);
});

test('a level is proposed with its arithmetic and given by a person; the late rule is shown; a change says why', async () => {
  await atTheDesk(marker);
  await expect(marker.getByText('Proposed from the measure, not given:')).toBeVisible();
  await expect(marker.getByText(/\d+ of \d+ pairs are inside what designers usually give them/)).toBeVisible();
  await expect(marker.locator('[data-criterion] button[aria-pressed=true]')).toHaveCount(0);
  await expect(marker.getByText('No total yet')).toBeVisible();
  for (let place = 0; place < (await criteria(marker).count()); place += 1) {
    await levels(marker, place).last().click();
    await expect(levels(marker, place).last()).toHaveAttribute('aria-pressed', 'true');
  }
  // All at the highest level: 100 % less the two begun days.
  await expect(marker.getByText('2 days late, every begun day counted', { exact: false })).toContainText(
    '100% × 90% = 90%',
  );
  await change(levels(marker, 0).first());
  await marker.getByRole('button', { name: 'Finish marking' }).click();
  await expect(marker.getByText('Marked. It is sent', { exact: false })).toBeVisible();
  await marker.reload();
  await marker.getByText('How the marks came about').click();
  await expect(marker.getByRole('listitem').filter({ hasText: `because “${reason}”` })).toContainText(assistant.name);
});

test('what was released stays as it went out; a mark that changes after goes out as a correction, and all of it is in the log', async () => {
  await release(/^Notes and marks went out to 1 student\.$/);
  const total = async () => {
    await student.goto(`/proofs/${own.proofIds[0]}`);
    await expect(student.getByText('the late rule takes 10% of the mark', { exact: false }).last()).toBeVisible();
    return student
      .locator('table caption')
      .filter({ hasText: /^Total/ })
      .innerText();
  };
  const first = await total();
  await atTheDesk(marker);
  await marker.getByRole('button', { name: 'Open it again' }).click();
  await change(levels(marker, 0).last());
  await marker.getByRole('button', { name: 'Finish marking' }).click();
  await expect(marker.getByText('Marked. It is sent', { exact: false })).toBeVisible();
  expect(await total()).toBe(first);
  await expect(student.getByText('correction number', { exact: false })).toHaveCount(0);
  await release(/1 of them as a correction/);
  expect(await total()).toMatch(/^Total 90%$/);
  expect(first).not.toMatch(/^Total 90%$/);
  await expect(student.getByText('correction number 1', { exact: false })).toBeVisible();
  expect(await student.content()).not.toContain(reason);

  const log = `/courses/${own.courseId}/settings`;
  await instructorPage.goto(log);
  await instructorPage.getByText(/^The newest \d+$/).click();
  const acts = await instructorPage.getByRole('listitem').allTextContents();
  for (const [verb, who] of [
    ['mark changed', assistant.name],
    ['proof reopened', assistant.name],
    ['round released', instructor.name],
    ['release corrected', instructor.name],
  ] as const) {
    expect(
      acts.filter((act) => act.includes(verb) && act.includes(who)),
      verb,
    ).not.toEqual([]);
  }
  for (const page of [marker, student]) expect(await statusOf(page, log)).toBe(404);
});

test('somebody new comes by a roster into a section, with a link that sets their password', async ({ browser }) => {
  await instructorPage.goto(`/courses/${own.courseId}/people/import`);
  await instructorPage.getByLabel('The rows').fill('Name,E-mail,Section\nNele Quintrell,nele@quayrow.example,Late');
  await instructorPage.getByRole('button', { name: 'Preview the import' }).click();
  await expect(instructorPage.getByText('1 new account', { exact: false })).toBeVisible();
  const bring = () => instructorPage.getByRole('button', { name: 'Import', exact: true }).click();
  await bring();
  await expect(instructorPage.getByText('Tick that they are to be made.', { exact: false }).first()).toBeVisible();
  await instructorPage.getByLabel('Make 1 new section: Late').check();
  await bring();
  const row = instructorPage
    .getByRole('region', { name: 'Links to hand over' })
    .getByRole('row', { name: /Nele Quintrell/ });
  const link = new URL(await row.locator('code').innerText()).pathname;
  const newcomer = await (await browser.newContext()).newPage();
  await newcomer.goto(link);
  await newcomer.getByLabel('New password').fill('herons on the sluice gate');
  await newcomer.getByRole('button', { name: 'Set the password and sign in' }).click();
  await newcomer.getByRole('link', { name: 'Plates for a tram', exact: true }).click();
  await expect(newcomer.getByRole('link', { name: 'Lines of Plates for a tram' }).first()).toBeVisible();
  await instructorPage.goto(`/courses/${own.courseId}/people`);
  await expect(instructorPage.getByRole('row', { name: /Nele Quintrell/ })).toContainText('Late');
});

/** Gives another level to what has one: it asks why. */
async function change(level: ReturnType<Page['locator']>): Promise<void> {
  await level.click();
  await marker.getByLabel('Why does it change?').fill(reason);
  await marker.getByRole('button', { name: 'Change the mark' }).click();
  await expect(level).toHaveAttribute('aria-pressed', 'true');
}

async function release(said: RegExp): Promise<void> {
  await instructorPage.goto(`${round}/release`);
  await instructorPage.getByRole('checkbox', { name: author.name }).check();
  await instructorPage.getByRole('checkbox', { name: other.name }).uncheck();
  await instructorPage.getByRole('button', { name: 'Release to those chosen' }).click();
  await expect(instructorPage.getByText(said)).toBeVisible();
}

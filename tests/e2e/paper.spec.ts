import { expect, test, type Page } from '@playwright/test';
import { axeOn } from './axe';
import { idsOf } from './demo-ids';
import { bram, browserOf, ines, instructor } from './demo-people';

const sound = async (page: Page) =>
  expect((await axeOn(page)).map(({ id, nodes }) => `${id}: ${nodes[0]?.target}`)).toEqual([]);

test('a student takes the released sheet and notes along, after having read the licence', async ({
  browser,
  baseURL,
}) => {
  const page = await browserOf(browser, ines);
  await page.goto('/courses');
  const { exerciseId } = idsOf(baseURL!, ines.email);
  await page.goto(`/exercises/${exerciseId}`);
  const proof = await page
    .locator('a[href^="/proofs/"]')
    .evaluateAll((links) => links.map((link) => link.getAttribute('href')!));
  let released = '';
  for (const address of proof) {
    await page.goto(address);
    if (await page.getByText('The critique sheet on paper').count()) {
      released = address.replace('/proofs/', '').split(/[?#]/)[0]!;
      break;
    }
  }
  expect(released).not.toBe('');
  await page.getByText('The critique sheet on paper').click();
  await page.getByLabel('Paper').selectOption('letter');
  await page.getByLabel('I have read the licences of the faces, and they allow this.').check();
  await sound(page);
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Sheet as PDF' }).click(),
  ]);
  expect(file.suggestedFilename()).toMatch(/^critique-round-\d-proof-\d\.pdf$/);
  const pdf = await page.request.get(`/api/exports/sheets/${released}?licence=read`);
  expect([pdf.status(), pdf.headers()['content-type'], (await pdf.body()).subarray(0, 8).toString()]).toEqual([
    200,
    'application/pdf',
    '%PDF-1.7',
  ]);
  expect((await page.request.get(`/api/exports/sheets/${released}`)).status()).toBe(400);
  const notes = await page.request.get(`/api/exports/released-notes/${released}`);
  expect(notes.headers()['content-type']).toContain('application/ld+json');
  expect(await notes.json()).toMatchObject({ type: 'AnnotationCollection' });
});

test('an instructor takes the class set, and looks at a roster before importing it', async ({ browser, baseURL }) => {
  const page = await browserOf(browser, instructor);
  const { courseId, exerciseId } = idsOf(baseURL!, bram.email);
  const set = await page.request.get(`/api/exports/class-set/${exerciseId}?round=1&licence=read`);
  expect([set.status(), set.headers()['content-disposition']]).toEqual([
    200,
    'attachment; filename="critique-sheets-round-1.pdf"',
  ]);

  await page.goto(`/courses/${courseId}/people/import`);
  const rows = page.getByLabel('The rows');
  await page.getByLabel('A file').setInputFiles({
    name: 'class.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from([
      ...Buffer.from('Surname;Given name;E-mail\nFinch;Ren'),
      0xe9,
      ...Buffer.from('e;not-an-address\n'),
    ]),
  });
  await expect(rows).toHaveValue(/Renée/);
  await expect(page.getByText('Windows-1252')).toBeVisible();
  await page.getByRole('button', { name: 'Preview the import' }).click();
  await expect(page.getByText(/^“not-an-address”:/)).toBeVisible();
  await expect(page.getByRole('button', { name: 'Import', exact: true })).toHaveCount(0);
  await expect(rows).toHaveValue(/not-an-address/);
  await sound(page);
  // An existing member: nothing is changed in the demo.
  await rows.fill(`Name,E-mail\n${bram.name},${bram.email}`);
  await page.getByRole('button', { name: 'Preview the import' }).click();
  await expect(page.getByRole('cell', { name: 'here already' })).toBeVisible();
  await page.getByRole('button', { name: 'Import', exact: true }).click();
  await expect(page.getByText('Everyone on the list is already in the course; nothing was changed.')).toBeVisible();
});

test('a course is copied with its dates moved, and the copy is looked at first', async ({ browser, baseURL }) => {
  const page = await browserOf(browser, instructor);
  const { courseId } = idsOf(baseURL!, bram.email);
  await page.goto(`/courses/${courseId}/copy`);
  await page.getByLabel('moved on by').check();
  await page.getByLabel('Weeks').fill('26');
  await page.getByRole('button', { name: 'Show the dates' }).click();
  await expect(page).toHaveURL(/weeks=26/);
  await expect(page.getByLabel('Weeks')).toHaveValue('26');
  await sound(page);
  await page.goto(`/courses/${courseId}/retention`);
  await expect(page.getByRole('heading', { name: 'What ending retention does' })).toBeVisible();
  await sound(page);
});

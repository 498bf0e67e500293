import { expect } from '@playwright/test';
import { axeOn } from '../axe';
import { test } from './fixture';

const SAID_OF_LINES =
  /^(Yes|No): (we (opened|closed) .. in the (upper|lower) line by \d+\/1000.em|nothing was moved. Both lines are untouched)\.$/;
const SAID_OF_GAPS = /^(Yes|No): (we (opened|closed) .. by \d+\/1000.em|nothing was moved. The line is untouched)\.$/;

test('a sitting ends with the smallest move seen, and is there the next time', async ({ page, server }) => {
  test.setTimeout(120_000);
  server.props = { practice: true, save: null };
  await page.goto(server.address);
  await page.getByRole('combobox', { name: 'Gaps' }).selectOption('with a round side');
  await page.getByRole('button', { name: 'Which line was changed?' }).click();
  const next = page.getByRole('button', { name: 'Next' });
  const upper = page.getByRole('button', { name: 'The upper one' });
  // Someone who always points at the upper one is right less than half of the time, so the sitting ends at a large
  // move.
  let [looks, unmoved] = [0, 0];
  for (; looks < 120 && (await upper.isVisible()); looks += 1) {
    await upper.click();
    const said = page.getByRole('status').filter({ hasText: SAID_OF_LINES });
    await expect(said).toBeVisible();
    if ((await said.textContent())!.includes('nothing was moved')) unmoved += 1;
    else await expect(page.locator('[data-part=ticks]')).toHaveCount(2);
    if (looks === 0) expect((await axeOn(page, '#main')).map(({ id }) => id)).toEqual([]);
    await next.click();
  }
  const ended = page.getByText(/You saw moves down to about \d+\/1000.em, at 48.px/);
  await expect(ended).toBeVisible();
  // A person who always reports a move is told that they reported one where there was none.
  if (unmoved > 0) await expect(ended).toContainText(`Where nothing was moved you saw that 0 of ${unmoved} time`);
  await page.reload();
  await expect(page.getByText('Your results are kept on this device only.')).toBeVisible();
  await page.getByText('The numbers of “Which line was changed: smallest move seen”').click();
  await expect(page.getByRole('columnheader', { name: /a round side, 48.px/ })).toBeVisible();
});

test('results wait on the device until the server has them, those of earlier days too, and are sent once', async ({
  page,
  server,
}) => {
  server.props = { practice: true, save: '/results' };
  let answers = false;
  const sent: { requestKey: string; fault: number }[][] = [];
  await page.route('**/results', (request) => {
    if (!answers) return request.abort();
    sent.push((request.request().postDataJSON() as { results: { requestKey: string; fault: number }[] }).results);
    return request.fulfill({ json: { kept: [] } });
  });
  // As an earlier release stored them: without a key, without the looks.
  await page.addInitScript(() => {
    if (!sessionStorage.getItem('seeded'))
      localStorage.setItem(
        'kerncrit/person-1/eye',
        JSON.stringify([
          { at: '2026-09-01T08:00:00.000Z', task: 'gap off', kind: 'open', size: 48, fault: 31 },
          { at: 'nonsense' },
        ]),
      );
    sessionStorage.setItem('seeded', 'yes');
  });
  await page.goto(server.address);
  await expect(page.getByText(/No answer from the server. Your results are kept on this device/)).toBeVisible();
  await expect(
    page.getByRole('heading', { name: 'Which gap is off (lines made even by measure): smallest move seen' }),
  ).toBeVisible();
  answers = true;
  await page.getByRole('button', { name: 'Send them now' }).click();
  await expect(page.getByText('All your results are kept with your account.')).toBeVisible();
  expect(sent.map((results) => results.map(({ requestKey, fault }) => [requestKey, fault]))).toEqual([
    [['of-2026-09-01T08:00:00.000Z', 31]],
  ]);
  await page.reload();
  await page.getByRole('button', { name: 'Which gap was moved?' }).waitFor();
  expect(sent).toHaveLength(1);
});

test('which gap was moved: the line itself is pointed at, and arrows walk along the names', async ({
  page,
  server,
}) => {
  server.props = { practice: true, save: null };
  await page.goto(server.address);
  await page.getByRole('button', { name: 'Which gap was moved?' }).click();
  const names = page.getByRole('group', { name: 'Gaps of the line, in order' }).getByRole('button');
  await names.first().focus();
  await page.keyboard.press('ArrowRight');
  await expect(names.nth(1)).toBeFocused();
  await expect(page.locator('[data-part=ticks]')).toHaveCount(1);
  const box = (await page.locator('svg.line-true').boundingBox())!;
  await page.mouse.click(box.x + 0.5 * box.width, box.y + 0.5 * box.height);
  await expect(page.getByRole('status')).toHaveText(SAID_OF_GAPS);
});

test('which gap was moved: what we did is told, whatever was chosen, and “none of them” can be', async ({
  page,
  server,
}) => {
  server.props = { practice: true, save: null };
  await page.goto(server.address);
  await page.getByRole('button', { name: 'Which gap was moved?' }).click();
  await page.getByRole('button', { name: 'None of them' }).click();
  await expect(page.getByRole('status')).toHaveText(SAID_OF_GAPS);
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByRole('button', { name: 'Which gap was moved?' })).toBeVisible();
});

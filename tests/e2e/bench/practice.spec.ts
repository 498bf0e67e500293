import { expect } from '@playwright/test';
import { axeOn } from '../axe';
import { test } from './fixture';

test('a sitting ends with the smallest fault seen, and is there the next time', async ({ page, server }) => {
  test.setTimeout(120_000);
  server.props = { practice: true, save: null };
  await page.goto(server.address);
  await page.getByRole('combobox', { name: 'Gaps' }).selectOption('with a round side');
  await page.getByRole('button', { name: 'Which is the more even?' }).click();
  const next = page.getByRole('button', { name: 'Next' });
  // Someone who always points at the upper one is right half of the time, so the sitting ends at a large fault.
  for (let look = 0; look < 90; look += 1) {
    const upper = page.getByRole('button', { name: 'The upper one' });
    if (!(await upper.isVisible())) break;
    await upper.click();
    await expect(
      page.getByRole('status').filter({
        hasText: /^(Yes|No): the gap between “.” and “.” (above|below) is too (wide|tight) by \d+ thousandths\.$/,
      }),
    ).toBeVisible();
    if (look === 0) expect((await axeOn(page).include('#main').analyze()).violations.map(({ id }) => id)).toEqual([]);
    await next.click();
  }
  await expect(page.getByText(/You saw faults down to about \d+ thousandths of an em, at 48 px/)).toBeVisible();
  await page.reload();
  await expect(page.getByText('Your results are kept on this device only.')).toBeVisible();
  await page.getByText('The numbers of “Which is the more even: smallest fault seen”').click();
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
  // As an earlier release kept them: without a key, without the looks.
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
  await expect(page.getByRole('heading', { name: 'Which gap is off: smallest fault seen' })).toBeVisible();
  answers = true;
  await page.getByRole('button', { name: 'Send them now' }).click();
  await expect(page.getByText('All your results are kept with your account.')).toBeVisible();
  expect(sent.map((results) => results.map(({ requestKey, fault }) => [requestKey, fault]))).toEqual([
    [['of-2026-09-01T08:00:00.000Z', 31]],
  ]);
  await page.reload();
  await page.getByRole('button', { name: 'Which gap is off?' }).waitFor();
  expect(sent).toHaveLength(1);
});

test('which gap is off: the line itself is pointed at, and arrows walk along the names', async ({ page, server }) => {
  server.props = { practice: true, save: null };
  await page.goto(server.address);
  await page.getByRole('button', { name: 'Which gap is off?' }).click();
  const names = page.getByRole('group', { name: 'Gaps of the line, in order' }).getByRole('button');
  await names.first().focus();
  await page.keyboard.press('ArrowRight');
  await expect(names.nth(1)).toBeFocused();
  await expect(page.locator('[data-part=ticks]')).toHaveCount(1);
  const box = (await page.locator('svg.line-true').boundingBox())!;
  await page.mouse.click(box.x + 0.5 * box.width, box.y + 0.5 * box.height);
  await expect(page.getByRole('status')).toHaveText(
    /^(Yes|No): the gap between “.” and “.” is too (wide|tight) by 100 thousandths\.$/,
  );
});

test('which gap is off: the wrong one is told, and the right one named', async ({ page, server }) => {
  server.props = { practice: true, save: null };
  await page.goto(server.address);
  await page.getByRole('button', { name: 'Which gap is off?' }).click();
  await page.getByRole('group', { name: 'Gaps of the line, in order' }).getByRole('button').first().click();
  await expect(page.getByRole('status')).toHaveText(
    /^(Yes|No): the gap between “.” and “.” is too (wide|tight) by 100 thousandths\.$/,
  );
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByRole('button', { name: 'Which gap is off?' })).toBeVisible();
});

import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Browser } from '@playwright/test';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launchChromium } from '../../fixtures/faces/chromium';

const css = ['tokens.css', 'controls.css']
  .map((file) => readFileSync(path.join(import.meta.dirname, '../../../app/_ui/css', file), 'utf8'))
  .join('\n');

describe('the style of controls, in Chromium', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launchChromium();
  });
  afterAll(() => browser?.close());

  it.each([
    '<input id="it" aria-invalid="true">',
    '<select id="it" aria-invalid="true"></select>',
    '<textarea id="it" aria-invalid="true"></textarea>',
  ])('marks an invalid field: %s', async (field) => {
    const page = await browser.newPage();
    await page.setContent(`<style>${css} #warning { color: var(--warning) }</style>
        <div class="field">${field}</div><span id="warning"></span>`);
    const [border, width, warning] = await page.evaluate(() => {
      const style = getComputedStyle(document.querySelector('#it')!);
      return [style.borderTopColor, style.borderTopWidth, getComputedStyle(document.querySelector('#warning')!).color];
    });
    await page.close();
    expect([border, width]).toEqual([warning, '2px']);
  });

  it.each(['button button-text', 'button button-text button-small'])(
    'begins at the edge of its column: %s',
    async (name) => {
      const page = await browser.newPage();
      await page.setContent(
        `<style>${css}</style><div id="column"><button class="${name}"><span id="it">Edit</span></button></div>`,
      );
      const [words, column] = await page.evaluate(() =>
        ['#it', '#column'].map((one) => document.querySelector(one)!.getBoundingClientRect().left),
      );
      await page.close();
      expect(words).toBeCloseTo(column!, 0);
    },
  );
});

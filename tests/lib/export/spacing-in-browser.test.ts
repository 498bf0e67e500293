import { readFileSync } from 'node:fs';
import type { Browser } from '@playwright/test';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildPack } from '@/lib/face/build-pack';
import { findFace } from '@/lib/face/catalogue';
import { markup, spacingCss } from '@/lib/export/spacing-formats';
import { placeLetters } from '@/shared/outline/place-letters';
import { launchChromium } from '../../fixtures/faces/chromium';

const TEXT = '1917 (41) AVTo 7.40';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

/** Faces whose figures have one width unless proportional ones are requested, and one whose do not. */
describe.each(['lato-400', 'source-sans-3-400', 'montserrat-400', 'overpass-400', 'fira-sans-400'])(
  'the exported CSS of a line in %s',
  (key) => {
    it('sets every letter in Chromium where the bench sets it, within 1/1000 em', async () => {
      const pack = await buildPack({ kind: 'catalogue', key }, TEXT);
      const spacing = { tracking: 12, offsets: pack.builtIn.map((_, index) => ((index * 7) % 23) - 11) };
      const css = spacingCss({
        pack,
        spacing,
        size: { value: 1000, unit: 'px' },
        ground: 'light',
        licence: 'OFL-1.1',
      });
      const clusters = pack.letters.map((letter) => pack.glyphs[letter]!.cluster);
      const face = readFileSync(findFace(key).path).toString('base64');
      const page = await browser.newPage();
      await page.setContent(
        `<style>@font-face { font-family: ${JSON.stringify(pack.face!.family)}; font-weight: ${pack.face!.weight};
         src: url(data:font/woff2;base64,${face}) }\n${css}</style>${markup(pack.text, clusters)}`,
      );
      const lefts = await page.evaluate(async () => {
        await document.fonts.ready;
        const spans = [...document.querySelectorAll('.spaced-line > span')];
        return spans.map((span) => span.getBoundingClientRect().left - spans[0]!.getBoundingClientRect().left);
      });
      await page.close();
      const wanted = placeLetters(pack, spacing).letters.map(({ x }) => (x * 1000) / pack.unitsPerEm);
      const worst = Math.max(...wanted.map((x, index) => Math.abs(x - lefts[index]!)));
      expect(worst, JSON.stringify(lefts.map(Math.round))).toBeLessThan(1);
    });
  },
);

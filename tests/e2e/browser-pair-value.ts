import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';

/**
 * What this browser itself adds between two letters of a face, in 1/1000 em: width of the pair less both widths, 1000
 * px, ligatures off.
 */
export async function browserPairValue(page: Page, file: string, left: string, right: string): Promise<number> {
  const bytes = readFileSync(`node_modules/${file}`).toString('base64');
  // A page of its own, without the application's content policy.
  const other = await page.context().newPage();
  await other.goto('about:blank');
  const value = await other.evaluate(
    async ([data, one, two]) => {
      const face = new FontFace('Measured', `url(data:font/woff2;base64,${data})`);
      document.fonts.add(await face.load());
      const canvas = document.createElement('canvas').getContext('2d')!;
      canvas.font = '1000px Measured';
      // A pixel of letter spacing turns ligatures off, in every width alike.
      canvas.letterSpacing = '1px';
      const width = (text: string) => canvas.measureText(text).width;
      return width(one! + two!) - width(one!) - width(two!);
    },
    [bytes, left, right],
  );
  await other.close();
  return value;
}

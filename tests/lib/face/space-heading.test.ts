import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { spaceHeading } from '@/lib/face/space-heading';

/** One rule a line, however the file is broken. */
const styles = readFileSync(new URL('../../../app/_ui/css/spaced.css', import.meta.url), 'utf8').replace(/\s+/g, ' ');

test('a heading keeps its words and letters, and every space in it has its style', async () => {
  const words = await spaceHeading('Faces and Types');
  expect(words.map((word) => word.map(({ cluster }) => cluster).join(''))).toEqual(['Faces', 'and', 'Types']);
  for (const { after } of words.flat()) {
    if (after !== 0)
      expect(styles).toContain(`.gap-${after < 0 ? `m${-after}` : after} { letter-spacing: ${after / 1000}em; }`);
  }
  // T before y: an open side over a slanted one asks for less room in any face (common practice).
  expect(words[2]![0]!.after).toBeLessThan(-20);
});

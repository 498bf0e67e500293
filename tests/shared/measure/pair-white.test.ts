import { describe, expect, it } from 'vitest';
import { pairWhite, prepareLine } from '@/shared/measure';
import { drawnPack } from '@/tests/fixtures/drawn-pack';

/** Leftmost point of the hatch at heights that `takes` accepts, x from the origin of the left letter. */
function leftmostAt(text: string, takes: (y: number) => boolean): number {
  const outline = pairWhite(prepareLine(drawnPack(text)), 0, 0);
  let least = Infinity;
  for (let i = 0; i < outline.length; i += 2) if (takes(outline[i + 1]!)) least = Math.min(least, outline[i]!);
  return least;
}

/** H ends at 660 of 720 and stands from 0 to 700; O overshoots it by 10; L is 90 high at its foot and 700 at its stem. By hand. */
describe('the hatch between two letters', () => {
  it('does not run behind a letter where its neighbour only overshoots it', () => {
    expect(leftmostAt('HO', (y) => y < 0 || y > 700)).toBe(660);
  });
  it('runs to the reach, 220, over a letter that its neighbour really rises above', () => {
    // The n is 510 high and its outermost ink at 505; H beside it goes on to 700, from the first height above the n.
    expect(leftmostAt('nH', (y) => y > 515 && y < 530)).toBe(505 - 220);
  });
});

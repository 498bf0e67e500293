import { expect, test } from 'vitest';
import { inkEdges, lineFits, originFor } from '@/app/_line/frame';
import { placeLetters, untouchedSpacing } from '@/shared/outline/place-letters';
import { toyPack } from '../../shared/editing/toy-pack';

const view = { width: 390, margin: 24, scale: 0.1 };
const at = (place: number) => ({ from: place, to: place });

test('a line that fits stands at the margin with its ink, whatever room its first letter carries', () => {
  for (const from of [-40, 0, 90]) {
    const ink = { from, to: from + 3420 };
    expect(lineFits(view, ink)).toBe(true);
    expect(originFor(view, { ink, follow: at(0) }, null) + from * view.scale).toBeCloseTo(24, 9);
  }
  expect(lineFits(view, { from: 0, to: 3421 })).toBe(false);
});

test('a line that does not fit shows what is followed, and stays where it is as long as that is well in view', () => {
  const ink = { from: 80, to: 9_000 };
  const origin = originFor(view, { ink, follow: at(4000) }, null);
  expect(origin + 400).toBeCloseTo(195, 9);
  expect(originFor(view, { ink, follow: at(4900) }, origin)).toBe(origin);
  expect(originFor(view, { ink, follow: at(5100) }, origin)).toBeCloseTo(195 - 510, 9);
});

test('both ends of what is followed come into view', () => {
  const ink = { from: 0, to: 9_000 };
  for (const [from, to] of [
    [2600, 4500],
    [700, 3000],
    [6000, 8900],
  ] as const) {
    for (const last of [null, 24, -200]) {
      const origin = originFor(view, { ink, follow: { from, to } }, last);
      expect(origin + from * view.scale).toBeGreaterThanOrEqual(0);
      expect(origin + to * view.scale).toBeLessThanOrEqual(390);
    }
  }
});

test('the ink of a line goes from the outline of its first letter to that of its last', () => {
  // Bars from 100 to 900 of an advance of 1000.
  const pack = toyPack(4);
  const placed = placeLetters(pack, untouchedSpacing(pack));
  expect(inkEdges(pack, placed, { from: 0, to: 3 })).toEqual({ from: 100, to: 3900 });
  const round = {
    ...pack,
    glyphs: [{ ...pack.glyphs[0]!, path: 'M60 0L440 0Q500 350 440 700C300 800 900 900 200 700Z' }],
  };
  expect(inkEdges(round, placed, { from: 1, to: 2 })).toEqual({ from: 1060, to: 2440 });
});

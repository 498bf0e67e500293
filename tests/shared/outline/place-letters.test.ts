import { describe, expect, test } from 'vitest';
import { placeLetters, shiftedPath, untouchedSpacing } from '@/shared/outline/place-letters';
import { drawnPack } from '@/tests/fixtures/drawn-pack';

describe('placing letters', () => {
  // Advances of the drawn letters: H 720, O 760, I 220, at 1000 units an em. Sums by hand.
  const pack = drawnPack('HOI', { builtIn: [-30, 0] });

  test('adds built-in, tracking and offset, and an offset moves all that stands right of it', () => {
    const { letters, gaps, width } = placeLetters(pack, { tracking: 10, offsets: [-5, 20] });
    expect(letters.map(({ x }) => x)).toEqual([0, 720 - 30 + 10 - 5, 695 + 760 + 10 + 20]);
    expect(gaps).toEqual([
      { index: 0, from: 720, to: 695, centre: 707.5 },
      { index: 1, from: 1455, to: 1485, centre: 1470 },
    ]);
    expect(width).toBe(1705);
  });

  test('counts offsets in thousandths of an em, whatever the grid', () => {
    const fine = { ...pack, unitsPerEm: 2000 };
    expect(placeLetters(fine, { tracking: 0, offsets: [-5, 0] }).letters[1]!.x).toBe(720 - 30 - 10);
  });

  test('a word space is part of its gap', () => {
    const spaced = drawnPack('H O');
    expect(placeLetters(spaced, untouchedSpacing(spaced)).letters[1]!.x).toBe(720 + 250);
  });

  test('a spacing of another length is refused with both numbers', () => {
    expect(() => placeLetters(pack, { tracking: 0, offsets: [1] })).toThrow(
      '“HOI” has 2 gaps, the spacing has 1 offsets',
    );
  });

  test('moves every kind of command by x alone', () => {
    expect(shiftedPath('M0 0L10 700Q20 720 -40 700C1 2 3 4 5 6Z', 10.5)).toBe(
      'M10.5 0L20.5 700Q30.5 720 -29.5 700C11.5 2 13.5 4 15.5 6Z',
    );
    expect(shiftedPath('M0 0L10 700Z', 1, -20)).toBe('M1 -20L11 680Z');
  });
});

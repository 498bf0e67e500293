import { describe, expect, it } from 'vitest';
import * as z from 'zod/mini';
import { wallCodeSchema } from '@/shared/schemas/wall';
import { medianSpacing, placed, sameAgain, signsOf } from '@/shared/class/wall';

describe('the class median', () => {
  it('takes each pair by itself, of tracking and offset together', () => {
    // By hand: pair 1 of −10, 0 + 5, 20 → 5; pair 2 of −30, 0 + 5, 0 → 0.
    expect(
      medianSpacing([
        { tracking: -10, offsets: [0, -20] },
        { tracking: 5, offsets: [0, 0] },
        { tracking: 0, offsets: [20, 0] },
      ]),
    ).toEqual({ tracking: 0, offsets: [5, 0] });
  });

  it('is a whole number between two, halves upwards', () => {
    expect(
      medianSpacing([
        { tracking: 0, offsets: [-4] },
        { tracking: 0, offsets: [-3] },
      ]).offsets,
    ).toEqual([-3]);
    expect(
      medianSpacing([
        { tracking: 0, offsets: [4] },
        { tracking: 0, offsets: [7] },
      ]).offsets,
    ).toEqual([6]);
  });

  it('says why there is none', () => {
    expect(() => medianSpacing([])).toThrow('no lines');
    expect(() =>
      medianSpacing([
        { tracking: 0, offsets: [1] },
        { tracking: 0, offsets: [1, 2] },
      ]),
    ).toThrow('one has 1 pairs and another 2');
  });
});

describe('lines on the wall', () => {
  it('stay where they are: what goes leaves, what comes stands last', () => {
    expect(placed(['C', 'A', 'B'], ['A', 'B', 'C'])).toEqual(['C', 'A', 'B']);
    expect(placed(['C', 'A', 'B'], ['A', 'C', 'E', 'D'])).toEqual(['C', 'A', 'E', 'D']);
    expect(placed([], ['A', 'B'])).toEqual(['A', 'B']);
  });

  it('are called by as few signs as tell them apart, two at the least', () => {
    expect([...signsOf(['BCDF', 'BCDG', 'HJKM', 'BX22'])]).toEqual([
      ['BCDF', 'BCDF'],
      ['BCDG', 'BCDG'],
      ['HJKM', 'HJ'],
      ['BX22', 'BX'],
    ]);
  });

  it('that were not set anew are the very same objects', () => {
    const [one, two] = [
      { key: 'A', version: 1, spacing: { tracking: 0, offsets: [1, 2] } },
      { key: 'B', version: 1, spacing: { tracking: 0, offsets: [3, 4] } },
    ];
    const again = sameAgain([one, two], [structuredClone(one), { ...two, spacing: { tracking: 0, offsets: [3, 5] } }]);
    expect(again[0]!.spacing).toBe(one.spacing);
    expect(again[1]!.spacing).toEqual({ tracking: 0, offsets: [3, 5] });
  });
});

describe('a code as it is typed', () => {
  it.each(['bcdfg-hjkmn', ' BCDFG HJKMN ', 'BCDFGHJKMN'])('“%s” is one', (typed) =>
    expect(z.parse(wallCodeSchema, typed)).toBe('BCDFGHJKMN'),
  );
  it.each(['', 'BCDFG', 'ABCDE-FGHIJ', 'BCDFGHJKMNP'])('“%s” is none', (typed) =>
    expect(z.safeParse(wallCodeSchema, typed).success).toBe(false),
  );
});

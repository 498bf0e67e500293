import { describe, expect, test } from 'vitest';
import { judgeLine, surpriseOf, tightnessOf, type SetLine } from '@/shared/usual-range/judge-line';
import type { UsualRange } from '@/shared/usual-range/range';

/** A pair that designers close by about 60: half of them by 50 to 70, nine tenths by 30 to 90. */
const CLOSED: UsualRange = { low: -90, halfLow: -70, middle: -60, mean: -60, halfHigh: -50, high: -30, leftAlone: 0.1 };
/** A pair that most leave alone. */
const LEFT: UsualRange = { low: -10, halfLow: -2, middle: 0, mean: 0, halfHigh: 2, high: 10, leftAlone: 0.9 };

/** Letters set without a miss, wide enough apart, at a size where half a pixel is 5. */
function setLine(ranges: (UsualRange | null)[], totals: number[], more: Partial<SetLine> = {}): SetLine {
  return {
    ranges,
    totals,
    tracking: 0,
    gaps: ranges.map(() => 150),
    clearances: ranges.map(() => 100),
    stemGap: 160,
    referenceGap: 150,
    sizePx: 100,
    ...more,
  };
}

const EIGHT = Array<UsualRange>(8).fill(LEFT);

describe('surprise', () => {
  test('is the miss over a tenth of the reference gap and two thirds of the range on the side missed', () => {
    // 30 wider than −60, of 15 and two thirds of the 30 up to −30.
    expect(surpriseOf(CLOSED, -30, 150)).toBeCloseTo(30 / (15 + 20));
    // 60 tighter, and the range reaches 30 down.
    expect(surpriseOf(CLOSED, -120, 150)).toBeCloseTo(-60 / (15 + 20));
  });

  test('is taken from half way between mean and middle', () => {
    expect(surpriseOf({ ...CLOSED, mean: -50 }, -55, 150)).toBe(0);
  });
});

describe('outside', () => {
  test('needs more than 10 beyond the nine tenths, and says neither way inside them', () => {
    const at = (total: number) =>
      judgeLine(setLine([CLOSED, ...EIGHT], [total, ...EIGHT.map(() => 0)])).pairs[0]!.outside;
    expect(at(-20)).toBe(false);
    expect(at(-19)).toBe(true);
    expect(at(-100)).toBe(false);
    expect(at(-101)).toBe(true);
  });

  test('needs more than 20 where most designers leave the pair alone', () => {
    const at = (total: number) => judgeLine(setLine([...EIGHT], [total, 0, 0, 0, 0, 0, 0, 0])).pairs[0]!.outside;
    expect(at(30)).toBe(false);
    expect(at(31)).toBe(true);
  });

  test('is never finer than half a pixel at the size set, nor than a twentieth of the gap', () => {
    const coarse = judgeLine(setLine([CLOSED, ...EIGHT], [-15, ...EIGHT.map(() => 0)], { sizePx: 24 }));
    expect(coarse.pairs[0]!.outside).toBe(false);
    const airy = judgeLine(
      setLine([CLOSED, ...EIGHT], [-15, ...EIGHT.map(() => 0)], { gaps: [400, ...EIGHT.map(() => 150)] }),
    );
    expect(airy.pairs[0]!.outside).toBe(false);
  });
});

describe('tightness', () => {
  test('is the tracking of a line of under six letter pairs, so that one pair’s miss is not the line’s', () => {
    expect(tightnessOf({ ranges: [LEFT, LEFT, LEFT], totals: [40, 40, 40], tracking: 15 })).toBe(15);
  });

  test('is what most pairs are wider by', () => {
    expect(tightnessOf({ ranges: EIGHT, totals: EIGHT.map(() => -40), tracking: 0 })).toBe(-40);
    expect(tightnessOf({ ranges: EIGHT, totals: EIGHT.map(() => -40), tracking: -40 })).toBe(-40);
  });

  test('is not moved by five unkerned diagonals beside one good pair', () => {
    const ranges = [CLOSED, CLOSED, CLOSED, CLOSED, CLOSED, LEFT, LEFT];
    const { tightness, pairs } = judgeLine(
      setLine(
        ranges,
        ranges.map(() => 0),
      ),
    );
    expect(tightness).toBe(0);
    expect(pairs.map((pair) => pair!.outside)).toEqual([true, true, true, true, true, false, false]);
  });

  test('is taken out before a pair is judged: a line tracked wide has no pair outside', () => {
    const ranges = [...EIGHT, CLOSED];
    const { pairs } = judgeLine(setLine(ranges, [...EIGHT.map(() => 120), 60], { tracking: 120 }));
    expect(pairs.map((pair) => pair!.outside)).toEqual(ranges.map(() => false));
  });
});

describe('silence', () => {
  test('of a pair without a range', () => {
    expect(judgeLine(setLine([null, ...EIGHT], [90, ...EIGHT.map(() => 0)])).pairs[0]).toBeNull();
  });

  test('of a whole line set tighter than a quarter of the stem gap', () => {
    const set = (total: number) =>
      judgeLine(
        setLine(
          EIGHT,
          EIGHT.map(() => total),
          { tracking: total },
        ),
      ).pairs[0];
    expect(set(-40)).not.toBeNull();
    expect(set(-41)).toBeNull();
  });

  test('of a line with more than a third of its pairs nearly touching', () => {
    const clearances = [10, 10, 10, 100, 100, 100, 100, 100];
    expect(
      judgeLine(
        setLine(
          EIGHT,
          EIGHT.map(() => 0),
          { clearances },
        ),
      ).pairs[0],
    ).toBeNull();
  });

  test('of a face without control letters', () => {
    expect(
      judgeLine(
        setLine(
          EIGHT,
          EIGHT.map(() => 0),
          { referenceGap: null },
        ),
      ).pairs[0],
    ).toBeNull();
  });
});

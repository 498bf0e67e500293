import { describe, expect, it } from 'vitest';
import { pearson, ranks, spearman } from '@/shared/stats/correlation';
import { intraclassCorrelation } from '@/shared/stats/intraclass-correlation';
import { krippendorffAlpha } from '@/shared/stats/krippendorff-alpha';
import { quantile } from '@/shared/stats/quantile';
import { weightedKappa } from '@/shared/stats/weighted-kappa';

describe('ICC(2,1)', () => {
  it('needs two things and two judges, and says how many there are', () => {
    expect(() => intraclassCorrelation([])).toThrow(/there are 0 and 0/);
    expect(() => intraclassCorrelation([[1, 2]])).toThrow(/there are 1 and 2/);
    expect(() => intraclassCorrelation([[1], [2]])).toThrow(/there are 2 and 1/);
  });
  it('needs a number from each judge in every row', () => {
    for (const odd of [NaN, Infinity, -Infinity])
      expect(() =>
        intraclassCorrelation([
          [1, 2],
          [3, odd],
        ]),
      ).toThrow(/each of 2 judges/);
    expect(() =>
      intraclassCorrelation([
        [1, 2],
        [1, 2, 3],
      ]),
    ).toThrow(/\[1, 2, 3\]/);
  });
  it('has an answer from two judges of two things on: 1 where both say the same of each', () => {
    expect(
      intraclassCorrelation([
        [1, 1],
        [2, 2],
      ]),
    ).toBeCloseTo(1, 12);
  });
  it('says nothing of ratings that do not vary', () => {
    expect(
      intraclassCorrelation([
        [3, 3],
        [3, 3],
      ]),
    ).toBeNull();
  });
  it('says nothing where the parts of the variance cancel out, by hand: 0 between things and judges, 1 left, 0 + 1 + 2(0 − 1)/2', () => {
    expect(
      intraclassCorrelation([
        [1, 2],
        [2, 1],
      ]),
    ).toBeNull();
  });
});

describe('Krippendorff’s alpha', () => {
  const units = [
    [1, 1],
    [2, 3],
    [3, 3],
    [1, 2],
  ];
  it('leaves out what only one observer judged, or nobody', () => {
    for (const level of ['nominal', 'ordinal', 'interval', 'ratio'] as const) {
      const alpha = krippendorffAlpha(units, level);
      expect(krippendorffAlpha([...units, [9, null], [null, 0], [null, null], []], level)).toBe(alpha);
      expect(
        krippendorffAlpha(
          units.map((unit) => [null, ...unit, null]),
          level,
        ),
      ).toBe(alpha);
    }
  });
  it('knows the order of values by their size and not by their digits: times five, ranks and ratios are the same', () => {
    const times = units.map((unit) => unit.map((value) => value * 5));
    expect(krippendorffAlpha(times, 'ordinal')).toBe(krippendorffAlpha(units, 'ordinal'));
    expect(krippendorffAlpha(times, 'ratio')).toBeCloseTo(krippendorffAlpha(units, 'ratio')!, 12);
  });
  it('says nothing where no value is paired, or none differ', () => {
    expect(krippendorffAlpha([], 'nominal')).toBeNull();
    expect(krippendorffAlpha([[1, null], [2]], 'interval')).toBeNull();
    expect(
      krippendorffAlpha(
        [
          [4, 4],
          [4, 4],
        ],
        'nominal',
      ),
    ).toBeNull();
  });
  it('takes values of a ratio that cancel out as no distance apart, instead of dividing by nothing', () => {
    expect(krippendorffAlpha([[-1, 1]], 'ratio')).toBeNull();
  });
});

describe('kappa', () => {
  it('needs a square table of counts', () => {
    expect(() =>
      weightedKappa(
        [
          [1, 2],
          [3, 4, 5],
        ],
        'none',
      ),
    ).toThrow(/\[3, 4, 5\]/);
    expect(() => weightedKappa([[1, 2]], 'none')).toThrow(/square/);
    for (const odd of [-1, NaN, Infinity])
      expect(() =>
        weightedKappa(
          [
            [1, odd],
            [0, 1],
          ],
          'none',
        ),
      ).toThrow(/table of counts/);
  });
  it('counts cells that nobody chose as nothing', () => {
    expect(
      weightedKappa(
        [
          [3, 0],
          [0, 3],
        ],
        'none',
      ),
    ).toBe(1);
  });
  it('says nothing of two judges who always chose the one same level, and refuses a table without a count', () => {
    expect(
      weightedKappa(
        [
          [5, 0],
          [0, 0],
        ],
        'linear',
      ),
    ).toBeNull();
    expect(() =>
      weightedKappa(
        [
          [0, 0],
          [0, 0],
        ],
        'none',
      ),
    ).toThrow(/single count/);
    expect(() => weightedKappa([], 'none')).toThrow(/single count/);
  });
});

describe('correlation', () => {
  it('needs two values in each list', () => {
    expect(() => pearson([], [])).toThrow(/0 were given/);
    expect(() => pearson([1], [2])).toThrow(/1 were given/);
    expect(pearson([1, 2], [5, 9])).toBeCloseTo(1, 12);
    expect(pearson([1, 2], [9, 5])).toBeCloseTo(-1, 12);
  });
  it('says nothing where either list does not vary', () => {
    expect(pearson([1, 1, 1], [1, 2, 3])).toBeNull();
    expect(pearson([1, 2, 3], [7, 7, 7])).toBeNull();
    expect(spearman([1, 2, 3], [7, 7, 7])).toBeNull();
  });
  it('never leaves −1 to 1 by a rounding error', () => {
    const list = [0.1, 0.2, 0.3, 0.7, 1.1, 13.37];
    expect(pearson(list, list)).toBeLessThanOrEqual(1);
    expect(
      pearson(
        list,
        list.map((value) => -3 * value),
      ),
    ).toBeGreaterThanOrEqual(-1);
  });
  it('gives ties the mean of their places wherever they stand: first, last, all, several groups', () => {
    expect(ranks([])).toEqual([]);
    expect(ranks([7])).toEqual([1]);
    expect(ranks([5, 5, 9])).toEqual([1.5, 1.5, 3]);
    expect(ranks([9, 5, 9, 9])).toEqual([3, 1, 3, 3]);
    expect(ranks([2, 2, 2])).toEqual([2, 2, 2]);
    expect(ranks([3, 1, 3, 1, 2])).toEqual([4.5, 1.5, 4.5, 1.5, 3]);
  });
});

describe('a quantile', () => {
  it('lies at a share from 0 to 1, both ends among them', () => {
    for (const share of [-0.01, 1.01, NaN]) expect(() => quantile([1, 2], share)).toThrow(/from 0 to 1/);
    expect(quantile([2, 1], 0)).toBe(1);
    expect(quantile([2, 1], 1)).toBe(2);
  });
});

import { describe, expect, test } from 'vitest';
import { outsideWords, usualWords } from '@/shared/wording/usual-words';

const range = (halfLow: number, halfHigh: number, leftAlone = 0.1) => ({
  ...{ low: halfLow - 30, halfLow, middle: (halfLow + halfHigh) / 2, mean: (halfLow + halfHigh) / 2 },
  ...{ halfHigh, high: halfHigh + 30, leftAlone },
});

describe('what is usual, in words', () => {
  test('rounds to five and names the whole line apart', () => {
    expect(usualWords({ range: range(-82, -58), total: -21, tightness: -41, sizePx: 16 })).toBe(
      'Estimated 60 to 80 closed, at reading sizes; yours 20, apart from the whole line’s −40.',
    );
  });

  test('says the way of mine where it is not that of the range', () => {
    const words = (halfLow: number, halfHigh: number, total: number) =>
      usualWords({ range: range(halfLow, halfHigh), total, tightness: 1, sizePx: 16 });
    expect(words(-80, -60, 10)).toBe('Estimated 60 to 80 closed, at reading sizes; yours 10 opened.');
    expect(words(5, 21, -10)).toBe('Estimated 5 to 20 opened, at reading sizes; yours 10 closed.');
    expect(words(-9, 11, -10)).toBe('Estimated between 10 closed and 10 opened, at reading sizes; yours 10 closed.');
    expect(words(-2, 2, 0)).toBe('Estimated neither opened nor closed, at reading sizes; yours neither.');
    expect(words(-20, 1, -10)).toBe('Estimated 0 to 20 closed, at reading sizes; yours 10.');
    expect(words(-22, -19, -10)).toBe('Estimated 20 closed, at reading sizes; yours 10.');
  });

  test('a pair that many leave alone is said to be, and a large size', () => {
    const words = (leftAlone: number) =>
      usualWords({ range: range(-20, 0, leftAlone), total: 0, tightness: 0, sizePx: 72 });
    expect(words(0.5)).toContain('About half the faces don’t kern this pair, by choice or omission.');
    expect(words(0.8)).toContain('Most faces don’t kern this pair');
    expect(words(0.1)).not.toContain('faces');
    expect(words(0.1)).toContain('At a size like this, setters often go further.');
  });

  test('outside is wider or tighter than usual, never too wide', () => {
    expect(outsideWords('AT', 'wider')).toBe('AT is wider than designers usually set it.');
  });
});

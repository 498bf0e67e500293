import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerStaircase, isFinished, startStaircase, threshold, type Staircase } from '@/shared/practice/staircase';

const limits = { least: 1, most: 300 };

describe('two-down one-up', () => {
  it('goes down after two right answers in a row and up after each wrong one', () => {
    const start = startStaircase(100, limits);
    const one = answerStaircase(start, true);
    expect(one.level).toBe(100);
    const two = answerStaircase(one, true);
    expect(two.level).toBeCloseTo(62.5, 9);
    expect(answerStaircase(two, false).level).toBeCloseTo(100, 9);
    expect(answerStaircase(one, false).level).toBeCloseTo(160, 9);
  });

  it('stays within its limits and ends, whatever is answered', () => {
    fc.assert(
      fc.property(fc.array(fc.boolean(), { minLength: 80, maxLength: 100 }), (answers) => {
        let now = startStaircase(100, limits);
        for (const right of answers) {
          now = answerStaircase(now, right);
          expect(now.level).toBeGreaterThanOrEqual(1);
          expect(now.level).toBeLessThanOrEqual(300);
        }
        expect(isFinished(now)).toBe(true);
      }),
    );
  });

  it('refuses a beginning outside its limits and says so', () => {
    expect(() => startStaircase(0.5, limits)).toThrow('from 0.5 does not fit between 1 and 300');
  });

  it('says nothing before it has turned often enough', () => {
    expect(threshold(startStaircase(100, limits))).toBeNull();
  });
});

describe('against Levitt 1971: the two-down one-up rule settles at 70.7 % right', () => {
  /** A seeded source of numbers from 0 to 1: xorshift (Marsaglia 2003). */
  function numbers(seed: number): () => number {
    let state = seed;
    return () => {
      state ^= state << 13;
      state ^= state >>> 17;
      state ^= state << 5;
      return (state >>> 0) / 2 ** 32;
    };
  }
  /** An observer who sees a fault of `level` with a probability that rises from ½ (guessing between two) to 1. */
  const seen = (level: number, middle: number) => 0.5 + 0.5 / (1 + (middle / level) ** 3);
  /** Where that probability is √½: 0.5 + 0.5/(1 + r³) = 0.7071 gives r³ = 1/0.41421 − 1 = 1.41421. */
  const levelAt707 = (middle: number) => middle / Math.cbrt(Math.SQRT2);

  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

  it.each([10, 25, 60])('a long run, for an observer whose middle is %d', (middle) => {
    const random = numbers(1971 + middle);
    // Levitt's point is that of a staircase that is never stopped by an end.
    let now: Staircase = startStaircase(120, { least: 0.01, most: 100_000 });
    while (now.turns.length < 4000) now = answerStaircase(now, random() < seen(now.level, middle));
    // Measured with steps of 1.2: 0.684 to 0.701 over a dozen seeds. The theory's 0.707 is that of steps without size.
    expect(Math.abs(seen(threshold(now)!, middle) - Math.SQRT1_2)).toBeLessThan(0.03);
  });

  it.each([10, 25, 60])('a sitting of a dozen turns, for an observer whose middle is %d', (middle) => {
    const random = numbers(1971 + middle);
    const sittings = Array.from({ length: 600 }, () => {
      let now: Staircase = startStaircase(120, limits);
      while (!isFinished(now)) now = answerStaircase(now, random() < seen(now.level, middle));
      return { level: threshold(now)!, trials: now.trials };
    });
    expect(mean(sittings.map(({ level }) => level)) / levelAt707(middle)).toBeGreaterThan(0.9);
    expect(mean(sittings.map(({ level }) => level)) / levelAt707(middle)).toBeLessThan(1.12);
    expect(mean(sittings.map(({ trials }) => trials))).toBeLessThan(55);
  });
});

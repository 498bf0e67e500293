import { describe, expect, it } from 'vitest';
import { agreementOf, agreementWords, bandOf, type Judged } from '@/shared/marking/agreement';
import { effectiveMark } from '@/shared/marking/marks';

const judged = (...pairs: [number, number][]): Judged[] => pairs.map(([first, second]) => ({ first, second }));
const often = (times: number, first: number, second: number): Judged[] =>
  Array.from({ length: times }, () => ({ first, second }));

describe('the agreement of two markers', () => {
  it('counts, shares and weighs as by hand', () => {
    // By hand: one of four is two levels apart. Observed disagreement 1 (weight 1 for two of two levels); expected
    // (0.25·2·1 + 1·2·2 + 0.25·1·1 + 0.25·1·2 + 1·1·1 + 0.25·1·1) / 4 = 1.625; kappa = 1 − 1/1.625 = 0.3846.
    const found = agreementOf(judged([0, 0], [1, 1], [2, 2], [0, 2]), 3);
    expect(found).toMatchObject({
      n: 4,
      exact: 0.75,
      adjacent: 0.75,
      table: [
        [1, 0, 1],
        [0, 1, 0],
        [0, 0, 1],
      ],
    });
    expect(found.kappa).toBeCloseTo(0.384615, 6);
  });

  it('is one where they always agree and nothing where there is nothing to tell apart', () => {
    expect(agreementOf(judged([0, 0], [1, 1]), 2).kappa).toBe(1);
    expect(agreementOf(judged([1, 1], [1, 1]), 3)).toMatchObject({ kappa: null, exact: 1 });
    expect(agreementOf([], 3)).toMatchObject({ n: 0, kappa: null, exact: null, adjacent: null });
    expect(() => agreementOf(judged([0, 3]), 3)).toThrow('Levels 1 and 4');
  });

  it('reads nothing into a few proofs, and calls the band a convention', () => {
    expect(agreementWords(agreementOf(often(9, 1, 1), 3))).toContain('too few to say');
    expect(agreementWords(agreementOf(often(12, 1, 1), 3))).toContain('cannot tell');
    const twelve = agreementWords(agreementOf([...often(6, 0, 0), ...often(6, 2, 2)], 3));
    expect(twelve).toContain('almost perfect');
    expect(twelve).toContain('a convention');
    expect(twelve).toContain('rough');
    expect(agreementWords(agreementOf([], 3))).toContain('No proof');
  });

  it('names the bands as Landis and Koch do (1977, p. 165)', () => {
    expect([-0.01, 0, 0.2, 0.21, 0.4, 0.41, 0.6, 0.61, 0.8, 0.81, 1].map(bandOf)).toEqual([
      'poor',
      'slight',
      'slight',
      'fair',
      'fair',
      'moderate',
      'moderate',
      'substantial',
      'substantial',
      'almost perfect',
      'almost perfect',
    ]);
  });
});

describe('the level that counts', () => {
  const given = { first: 1, second: 2, settled: null };
  it('is the settled one, else the one both gave, else the first marker’s', () => {
    expect(effectiveMark({ ...given, settled: 0 }, 'done')).toEqual({ level: 0, from: 'settled' });
    expect(effectiveMark({ ...given, second: 1 }, 'done')).toEqual({ level: 1, from: 'agreed' });
    expect(effectiveMark(given, 'done')).toEqual({ level: 1, from: 'differs' });
    expect(effectiveMark(given, 'waits')).toEqual({ level: 1, from: 'second-waits' });
    expect(effectiveMark({ ...given, second: null }, 'none')).toEqual({ level: 1, from: 'first' });
    expect(effectiveMark({ first: null, second: null, settled: null }, 'done')).toEqual({ level: null, from: 'first' });
  });
});

import { describe, expect, it } from 'vitest';
import { referenceSpacings, repeatability } from '@/shared/reference-spacings';
import { seededRandom } from '@/tests/bench/agreement/random';

describe('repeatability', () => {
  it('is 2.8 times the spread of two takes (arithmetic by hand)', () => {
    // Differences +4, −4, +4, −4 about equal means: each take 2 from its gap's mean, squares 8 · 4 = 32, ÷ (3 · 1); 2.8
    // · 3.266 = 9.14.
    expect(
      repeatability([
        [0, 10, 20, 30],
        [4, 6, 24, 26],
      ]),
    ).toBe(9);
  });
  it('is not biased low by the tightness taken out (gaps that stray by s = 10, drawn at random)', () => {
    const random = seededRandom(5);
    // The sum of twelve even draws, less 6, has spread 1.
    const stray = () => 10 * (Array.from({ length: 12 }, random).reduce((sum, value) => sum + value, 0) - 6);
    for (const gaps of [2, 3, 11]) {
      let squares = 0;
      for (let trial = 0; trial < 4000; trial += 1) {
        const take = () => Array.from({ length: gaps }, stray);
        squares += (repeatability([take(), take()])! / 2.8) ** 2;
      }
      expect(Math.sqrt(squares / 4000), `${gaps} gaps`).toBeCloseTo(10, 0);
    }
  });
  it('takes out the tightness of each take', () => {
    expect(
      repeatability([
        [0, 10, 20, 30],
        [50, 60, 70, 80],
      ]),
    ).toBe(0);
  });
  it('pools three takes (arithmetic by hand)', () => {
    // Centred takes (−5, 5), (−8, 8), (−2, 2): means −5 and 5; squares 0+9+9 twice = 36; ÷ (1 · 2) = 18; 2.8 · 4.24 =
    // 11.9.
    expect(
      repeatability([
        [0, 10],
        [0, 16],
        [0, 4],
      ]),
    ).toBe(12);
  });
  it('is not known from one take', () => {
    expect(repeatability([[0, 10]])).toBeNull();
    expect(repeatability([[0], [10]])).toBeNull();
    expect(repeatability([[], []])).toBeNull();
    expect(() => repeatability([[1], [1, 2]])).toThrow('these have 1, 2 gaps');
  });
});

describe('referenceSpacings', () => {
  const take = (authorId: string, slot: number, offsets: number[]) => ({
    author: authorId,
    authorId,
    slot,
    spacing: { tracking: 0, offsets },
    tolerances: [null, 25, null, null],
    reasons: [null, 'open', null, null],
  });

  it('gives each author once, by the first take', () => {
    const both = referenceSpacings(
      [take('Ana', 1, [0, 10, 20, 30]), take('Ben', 1, [1, 2, 3, 4]), take('Ana', 2, [4, 6, 24, 26])],
      10,
    );
    expect(both.map(({ author, offsets }) => [author, offsets])).toEqual([
      ['Ana', [0, 10, 20, 30]],
      ['Ben', [1, 2, 3, 4]],
    ]);
  });
  it('fills tolerances from the author’s own repeatability, else from the exercise', () => {
    const [ana, ben] = referenceSpacings(
      [take('Ana', 1, [0, 10, 20, 30]), take('Ana', 2, [4, 6, 24, 26]), take('Ben', 1, [0, 0, 0, 0])],
      10,
    );
    expect(ana!.tolerances).toEqual([9, 25, 9, 9]);
    expect(ben!.tolerances).toEqual([10, 25, 10, 10]);
  });
});

import { describe, expect, it } from 'vitest';
import { repeatability } from '@/shared/reference/repeatability';
import { referenceSpacings } from '@/shared/reference/reference-spacings';

describe('repeatability', () => {
  it('is 2.8 times Dahlberg’s spread of two takes (arithmetic by hand)', () => {
    // Differences +4, −4, +4, −4 about equal means: Σd² = 64, n = 4, √(64 ÷ 8) = 2.828…, × 2.8 = 7.92.
    expect(
      repeatability([
        [0, 10, 20, 30],
        [4, 6, 24, 26],
      ]),
    ).toBe(8);
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
    // Centred takes (−5, 5), (−8, 8), (−2, 2): means −5 and 5; squares 0+9+9 twice = 36; ÷ (2 gaps · 2) = 9; 2.8 · 3 = 8.4.
    expect(
      repeatability([
        [0, 10],
        [0, 16],
        [0, 4],
      ]),
    ).toBe(8);
  });
  it('is not known from one take', () => {
    expect(repeatability([[0, 10]])).toBeNull();
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
    expect(ana!.tolerances).toEqual([8, 25, 8, 8]);
    expect(ben!.tolerances).toEqual([10, 25, 10, 10]);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { moveByMap, pairMap, type LineOfLetters } from '@/shared/exercise/pair-map';

/** A line as it is split: letters without the spaces, and for each pair whether it contains one. */
function line(text: string): LineOfLetters {
  const letters = [...text].filter((letter) => letter !== ' ');
  const spaced: boolean[] = [];
  [...text].forEach((letter, index, all) => {
    if (letter !== ' ' && index > 0) spaced.push(all[index - 1] === ' ');
  });
  return { letters, spaced };
}

// Expected maps are made by hand: write both lines one under the other and see which neighbours stayed neighbours.
describe('pairMap', () => {
  it.each([
    ['the same line', 'VALLEY', 'VALLEY', [0, 1, 2, 3, 4]],
    ['a letter in front', 'HAT', 'CHAT', [1, 2]],
    ['a letter at the end', 'HAT', 'HATS', [0, 1]],
    ['a letter between', 'MAT', 'MEAT', [null, 2]],
    ['a letter less', 'MEAT', 'MAT', [null, null, 1]],
    ['another letter in the middle', 'TOWER', 'TOKER', [0, null, null, 3]],
    ['a double letter', 'BOOK', 'BOK', [0, null, 1]],
    ['nothing in common', 'ABC', 'xyz', [null, null]],
    ['a space put in', 'NORTHGATE', 'NORTH GATE', [0, 1, 2, 3, null, 5, 6, 7]],
    ['a space kept', 'NORTH GATE', 'NORTH GATES', [0, 1, 2, 3, 4, 5, 6, 7]],
  ])('%s', (_, before, after, expected) => {
    expect(pairMap(line(before), line(after))).toEqual(expected);
  });

  it('keeps every pair of an unchanged line, and never sends two pairs to one place', () => {
    const word = fc
      .array(fc.constantFrom('A', 'V', 'T', 'o', ' '), { minLength: 1, maxLength: 24 })
      .map((letters) => letters.join('').trim() || 'A');
    fc.assert(
      fc.property(word, word, (before, after) => {
        const same = line(before);
        expect(pairMap(same, same)).toEqual(same.spaced.map((_s, index) => index));
        const places = pairMap(same, line(after)).filter((place) => place !== null);
        expect([...new Set(places)]).toEqual(places);
        expect([...places].sort((a, b) => a - b)).toEqual(places);
      }),
    );
  });
});

describe('moveByMap', () => {
  it('puts values where their pairs stand now and fills what is new', () => {
    expect(moveByMap([-10, 25], [1, 2], 3, 0)).toEqual([0, -10, 25]);
    expect(moveByMap([-10, 25, 7], [0, null, 1], 2, 0)).toEqual([-10, 7]);
  });
  it('refuses values of another line', () => {
    expect(() => moveByMap([1], [0, 1], 2, 0)).toThrow('The map is for 2 pairs, but 1 values were given.');
  });
});

describe('the length of a match', () => {
  /** All subsequences tried: slow and plainly right, for lines of up to eight pairs. */
  const longestByTrying = (a: string[], b: string[]): number => {
    let best = 0;
    for (let chosen = 0; chosen < 2 ** a.length; chosen++) {
      const picked = a.filter((_, index) => (chosen >> index) & 1);
      let at = 0;
      for (const pair of b) if (pair === picked[at]) at++;
      if (at === picked.length) best = Math.max(best, picked.length);
    }
    return best;
  };
  const pairsOf = (text: string) => [...text].slice(1).map((letter, index) => `${text[index]}${letter}`);

  it('is the longest there is', () => {
    const word = fc
      .array(fc.constantFrom('A', 'V', 'T'), { minLength: 1, maxLength: 9 })
      .map((letters) => letters.join(''));
    fc.assert(
      fc.property(word, word, (before, after) => {
        const kept = pairMap(line(before), line(after)).filter((place) => place !== null).length;
        expect(kept).toBe(longestByTrying(pairsOf(before), pairsOf(after)));
      }),
    );
  });
});

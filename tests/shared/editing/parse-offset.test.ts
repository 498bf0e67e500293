import { describe, expect, it } from 'vitest';
import { gapName, gapValueWords, pairAmounts } from '@/shared/editing/pair-words';
import { parseOffset } from '@/shared/editing/parse-offset';
import { toyPack } from './toy-pack';

describe('a typed offset', () => {
  it.each([
    ['-12', -12],
    ['\u221212', -12],
    [' +7 ', 7],
    ['0', 0],
    ['-0', 0],
    ['2000', 2000],
  ])('reads %s as %d', (typed, value) => {
    expect(parseOffset(typed)).toEqual({ value });
  });
  it.each(['', 'twelve', '1e3', '--4', '12px'])('quotes %j back instead of guessing', (typed) => {
    const parsed = parseOffset(typed);
    expect(parsed).toHaveProperty('error');
    if (typed !== '' && 'error' in parsed) expect(parsed.error).toContain(`“${typed}”`);
  });
  it('says that thousandths are whole and where the reach ends', () => {
    expect(parseOffset('3.5')).toEqual({ error: '“3.5” is not whole: thousandths are not divided further.' });
    expect(parseOffset('-2001')).toEqual({ error: '“-2001” is out of reach: type a number from \u22122000 to 2000.' });
    expect(parseOffset('-1', 0)).toHaveProperty('error');
  });
});

describe('a gap in words', () => {
  // 2000 units per em: −136 units are −68 thousandths; with −12 that makes −80.
  const pack = { ...toyPack(2), unitsPerEm: 2000, builtIn: [-136] };
  it('names its letters, its offset and its total', () => {
    expect(gapName(pack, 0)).toBe('gap between capital I and capital I');
    expect(gapValueWords(pairAmounts(pack, { tracking: 0, offsets: [-12] }, 0))).toBe(
      'offset minus 12, total minus 80',
    );
  });
  it('counts tracking into the total and leaves it out of the offset', () => {
    expect(pairAmounts(pack, { tracking: 10, offsets: [-12] }, 0)).toEqual({
      builtIn: -68,
      tracking: 10,
      offset: -12,
      total: -70,
    });
  });
  it('quotes a gap that is not there', () => {
    expect(() => gapName(pack, 3)).toThrow('has no gap 3');
  });
});

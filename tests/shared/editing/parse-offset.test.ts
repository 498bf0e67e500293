import { describe, expect, it } from 'vitest';
import { parseOffset, signed, spoken } from '@/shared/editing/parse-offset';

describe('a typed offset', () => {
  it.each([['-12', -12], ['\u221212', -12], [' +7 ', 7], ['0', 0], ['-0', 0], ['2000', 2000]])('reads %s as %d', (typed, value) => {
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
  it('shows a real minus and speaks it as a word', () => {
    expect([signed(-12), signed(0), signed(5)]).toEqual(['\u221212', '0', '+5']);
    expect(spoken(-12)).toBe('minus 12');
  });
});

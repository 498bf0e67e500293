import { describe, expect, it } from 'vitest';
import { pairOfLine } from '@/shared/line/excerpt';
import { placeLetters } from '@/shared/outline/place-letters';
import { parsePack } from '@/shared/schemas/pack';
import { drawnPack } from '@/tests/fixtures/drawn-pack';

describe('the letters of one gap', () => {
  const pack = drawnPack('HOI H', { builtIn: [-30, 10, 0] });
  const spacing = { tracking: 5, offsets: [0, 12, -7] };

  it('are a sound line of two with the built-in, offset and word space of that gap', () => {
    const pair = pairOfLine({ pack, spacing }, 1);
    expect(parsePack(pair.pack).text).toBe('OI');
    expect([pair.pack.builtIn, pair.pack.wordSpace, pair.spacing]).toEqual([[10], [0], { tracking: 5, offsets: [12] }]);
    expect(pairOfLine({ pack, spacing }, 2).pack.text).toBe('I H');
  });
  it('stand as far from each other as in the line', () => {
    const [line, pair] = [placeLetters(pack, spacing), pairOfLine({ pack, spacing }, 1)];
    const drawn = placeLetters(pair.pack, pair.spacing);
    expect(drawn.letters[1]!.x - drawn.letters[0]!.x).toBeCloseTo(line.letters[2]!.x - line.letters[1]!.x, 9);
  });
  it('are refused where there is no such gap', () => {
    expect(() => pairOfLine({ pack, spacing }, 3)).toThrow(RangeError);
  });
});

import { describe, expect, it } from 'vitest';
import { builtInOf, setLine } from '@/shared/editing/set-line';
import { toyPack } from './toy-pack';

describe('setting a line', () => {
  // Arithmetic by hand: 2000 units per em, so one thousandth is two units.
  it('adds advance, built-in, word space, tracking and offset', () => {
    const pack = { ...toyPack(3), unitsPerEm: 2000, builtIn: [-40, 0], wordSpace: [0, 500] };
    const set = setLine(pack, { tracking: 10, offsets: [-5, 20] });
    // 1000 − 40 + (10 − 5)·2 = 970; 970 + 1000 + 500 + (10 + 20)·2 = 2530; 2530 + 1000 = 3530.
    expect(set).toEqual({ origins: [0, 970, 2530], width: 3530 });
    expect(builtInOf(pack, 0)).toBe(-20);
  });
  it('moves everything to the right of a pair and nothing to its left', () => {
    const pack = toyPack(4);
    const before = setLine(pack, { tracking: 0, offsets: [0, 0, 0] });
    const after = setLine(pack, { tracking: 0, offsets: [0, 30, 0] });
    expect(after.origins.map((x, letter) => x - (before.origins[letter] ?? 0))).toEqual([0, 0, 30, 30]);
  });
});

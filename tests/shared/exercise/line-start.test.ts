import { describe, expect, it } from 'vitest';
import { isUntouched, madeStart } from '@/shared/exercise/line-start';
import { apparentGapAt, prepareLine } from '@/shared/measure';
import { median } from '@/shared/stats/median';
import { drawnPack } from '@/tests/fixtures/drawn-pack';
import { registryFace } from '@/tests/fixtures/registry-face';
import { registryPack } from '@/tests/fixtures/registry-pack';

describe('a start that is wrong on purpose', () => {
  const pack = drawnPack('HOH');

  it('has one gap off, and the others as the face gives them', () => {
    expect(madeStart(pack, { kind: 'one-gap', gap: 1, by: 40 })).toEqual({ tracking: 0, offsets: [0, 40] });
    expect(() => madeStart(pack, { kind: 'one-gap', gap: 2, by: 40 })).toThrow('no gap 3');
  });

  it('is tight everywhere by tracking alone', () => {
    expect(madeStart(pack, { kind: 'tight', by: 25 })).toEqual({ tracking: -25, offsets: [0, 0] });
  });

  it('made from area alone gives every gap between letters the same white, and leaves word spaces alone', async () => {
    const real = registryPack(await registryFace('lato-400'), 'TOADVANE');
    const { tracking, offsets } = madeStart(real, { kind: 'area' });
    const line = prepareLine(real);
    const gapsAt = (add: (gap: number) => number) =>
      line.pairs.map((_, gap) => apparentGapAt(line, gap, line.pairs[gap]!.builtIn + add(gap)));
    const middle = median(gapsAt(() => 0));
    expect(tracking).toBe(0);
    // Offsets are whole thousandths, and one of them moves an apparent gap by no more than one.
    for (const gap of gapsAt((index) => offsets[index]!)) expect(Math.abs(gap - middle)).toBeLessThanOrEqual(0.6);
    expect(offsets.some((offset) => offset !== 0)).toBe(true);
    const spaced = drawnPack('IOI', { wordSpace: [250, 0] });
    expect(madeStart(spaced, { kind: 'area' }).offsets[0]).toBe(0);
  });
});

describe('untouched', () => {
  const start = { tracking: -25, offsets: [0, 40] };
  it('is what is still as the line began, number by number', () => {
    expect(isUntouched({ tracking: -25, offsets: [0, 40] }, start)).toBe(true);
    expect(isUntouched({ tracking: -24, offsets: [0, 40] }, start)).toBe(false);
    expect(isUntouched({ tracking: -25, offsets: [0, 0] }, start)).toBe(false);
    expect(isUntouched({ tracking: -25, offsets: [0] }, start)).toBe(false);
  });
});

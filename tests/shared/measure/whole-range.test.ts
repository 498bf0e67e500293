import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { measureLine } from '@/shared/scoring';
import { lineMeasureSchema } from '@/shared/schemas/measure';
import type { Pack } from '@/shared/schemas/pack';
import { raised, withPoints } from '@/tests/fixtures/changed-pack';
import { drawnPack } from '@/tests/fixtures/drawn-pack';
import { registryFace } from '@/tests/fixtures/registry-face';
import { registryPack } from '@/tests/fixtures/registry-pack';

const at = { size: { value: 72, unit: 'px' }, ground: 'light' } as const;
const TEXT = 'LAVATORY1n.g';
/** What the bench accepts. */
const amount = fc.oneof(fc.integer({ min: -2000, max: 2000 }), fc.constantFrom(-2000, -600, 0, 2000));

let packs: Pack[];
beforeAll(async () => {
  const lato = registryPack(await registryFace('lato-400'), TEXT);
  const inkFarAbove = withPoints(lato, (x, y) => [x, y + 9000]);
  packs = [
    drawnPack('HOLAVTonI1.H'),
    lato,
    registryPack(await registryFace('playfair-display-400'), TEXT),
    inkFarAbove,
    withPoints(lato, (x, y) => [x, y - 9000]),
    raised(lato, -9000),
    { ...lato, control: { H: null, O: null, n: null, o: null }, vertical: { ...lato.vertical, ascenderTop: 0 } },
    { ...lato, vertical: { ...lato.vertical, ascenderTop: 1_000_000 } },
    // Letters of no width at all, and of no height.
    withPoints(lato, (_, y) => [0, y]),
    withPoints(lato, (x) => [x, 0]),
  ];
});

describe('every spacing that the bench accepts', () => {
  it('gives figures only, wherever the ink lies', () => {
    fc.assert(
      fc.property(fc.nat(9), amount, fc.array(amount, { minLength: 11, maxLength: 11 }), (which, tracking, offsets) => {
        const measured = measureLine(packs[which]!, { tracking, offsets }, at);
        expect(notFinite(measured)).toEqual([]);
        lineMeasureSchema.parse(measured);
      }),
      { numRuns: 300, examples: [[0, -600, new Array<number>(11).fill(0)]] },
    );
  });
});

/** Paths of all numbers that JSON could not carry. */
function notFinite(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => notFinite(inner, `${path}.${key}`));
}

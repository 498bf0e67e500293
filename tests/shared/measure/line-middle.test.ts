import { beforeAll, describe, expect, it } from 'vitest';
import { pairReferences, prepareLine } from '@/shared/measure';
import { measureLine } from '@/shared/scoring';
import type { Pack } from '@/shared/schemas/pack';
import { drawnPack } from '@/tests/fixtures/drawn-pack';
import { registryFace } from '@/tests/fixtures/registry-face';
import { registryPack } from '@/tests/fixtures/registry-pack';

const at = { size: { value: 72, unit: 'px' }, ground: 'light' } as const;
const set = (pack: Pack, offsets: number[] = []) =>
  measureLine(pack, { tracking: 0, offsets: pack.builtIn.map((_, index) => offsets[index] ?? 0) }, at);

/** The middle of a line only describes; where it would mislead there is none. */
describe('the middle of a line', () => {
  it('is not made by a line of fewer than six letter pairs', () => {
    const short = set(drawnPack('HOIOHO'));
    expect(short.line).toMatchObject({ reference: null, asBuilt: null, evennessGap: null });
    expect(short.pairs.map(({ reference, suggestion }) => [reference, suggestion])).toEqual(
      short.pairs.map(() => [null, null]),
    );
    expect(set(drawnPack('HOIOHOI')).line.reference).not.toBeNull();
  });

  it('counts letter pairs, no figures, points or word spaces', () => {
    expect(set(drawnPack('HOLAV TI1.')).line.reference).toBeNull();
  });

  it('is not moved by pairs that cross or nearly touch', () => {
    // Eight pairs of stems 120 apart; three of them pushed together until they touch, cross and nearly touch.
    const pack = drawnPack('IIIIIIIIII');
    const line = set(pack, [-120, -200, -105]);
    expect(line.pairs.slice(0, 3).map(({ contact }) => contact)).toEqual(['touching', 'crossing', 'near']);
    expect(line.line.reference).toBe(line.pairs[5]!.apparentGap);
    expect(line.pairs[5]!.suggestion).toBe(0);
  });

  it('is missing where fewer than six pairs stand apart', () => {
    const pack = drawnPack('IIIIIII');
    expect(set(pack).line.reference).not.toBeNull();
    expect(set(pack, [-120]).line.reference).toBeNull();
    expect(pairReferences(prepareLine(pack), [-120, 0, 0, 0, 0, 0])).toEqual(new Array(6).fill(null));
  });
});

/** An old-style serif in which P and E nearly touch by their serifs. */
describe('a short word with one near contact', () => {
  let pack: Pack;
  beforeAll(async () => {
    pack = registryPack(await registryFace('eb-garamond-400'), 'TYPE');
  });
  it('is told nothing of its gaps', () => {
    for (const pair of set(pack).pairs) expect(pair).toMatchObject({ reference: null, suggestion: null });
  });
});

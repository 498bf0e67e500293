import { beforeAll, describe, expect, it } from 'vitest';
import { measureLine } from '@/shared/scoring';
import type { PairMeasure } from '@/shared/schemas/measure';
import type { Pack } from '@/shared/schemas/pack';
import { onFinerGrid, raised, sheared } from '@/tests/fixtures/changed-pack';
import { registryFace } from '@/tests/fixtures/registry-face';
import { registryPack } from '@/tests/fixtures/registry-pack';

const at = { size: { value: 72, unit: 'px' }, ground: 'light' } as const;
const TEXTS = ['HALTVORNEJXZKWYF', 'ranvoxjgfetlkyqs', 'Tovwaffle7Ay'];
/** The tangent of 12 degrees. */
const LEAN = 0.21256;

/** The same letters somewhat lower, on a finer grid, or leaning: what one sees between them stays. */
describe.each(['lato-400', 'playfair-display-400', 'eb-garamond-700', 'crimson-pro-400'])('measures of %s', (name) => {
  let packs: Pack[];
  beforeAll(async () => {
    const face = await registryFace(name);
    packs = TEXTS.map((text) => registryPack(face, text));
  });

  it.each([0.1, 0.5])('stay when the face is moved down by %s/1000 em', (down) => {
    for (const pack of packs) {
      const fine = onFinerGrid(pack, 20);
      expectSame(measured(raised(fine, (-down * fine.unitsPerEm) / 1000)), measured(fine));
    }
  });
  it('stay on a finer grid', () => {
    for (const pack of packs) expectSame(measured(onFinerGrid(pack, 3)), measured(pack));
  });
  it('stay when all letters lean by 12 degrees, clearance excepted', () => {
    for (const pack of packs) {
      const fine = onFinerGrid(pack, 20);
      expectSame(measured(sheared(fine, LEAN)), measured(fine), { leaning: true });
      expectSame(measured(sheared(fine, -LEAN)), measured(fine), { leaning: true });
    }
  });
});

function measured(pack: Pack): PairMeasure[] {
  return measureLine(pack, { tracking: 0, offsets: pack.builtIn.map(() => 0) }, at).pairs;
}

function expectSame(found: PairMeasure[], wanted: PairMeasure[], { leaning = false } = {}): void {
  found.forEach((pair, index) => {
    const other = wanted[index]!,
      name = other.left + other.right;
    const near = (a: number, b: number, what: string) => expect(Math.abs(a - b), `${name}, ${what}`).toBeLessThan(1);
    near(pair.apparentGap, other.apparentGap, 'apparent gap');
    near(pair.area, other.area, 'area');
    if (!leaning) near(pair.clearance, other.clearance, 'clearance');
    near(pair.reference ?? 0, other.reference ?? 0, 'reference');
    expect(Math.abs((pair.suggestion ?? 0) - (other.suggestion ?? 0)), `${name}, suggestion`).toBeLessThanOrEqual(1);
    expect([name, pair.sides]).toEqual([name, other.sides]);
  });
}

import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { signedArea } from '@/shared/geometry/polygon';
import { apparentGapAt, offsetForGap, pairWhite, prepareLine } from '@/shared/measure';
import { measureLine } from '@/shared/scoring';
import type { Pack } from '@/shared/schemas/pack';
import { withPoints } from '@/tests/fixtures/changed-pack';
import { drawnPack } from '@/tests/fixtures/drawn-pack';
import { registryFace } from '@/tests/fixtures/registry-face';
import { registryPack } from '@/tests/fixtures/registry-pack';

const at = { size: { value: 72, unit: 'px' }, ground: 'light' } as const;

/** Two stems as high as the top of d, 740: every height from the baseline up holds the same white. */
const tall = (pack: Pack) => withPoints(pack, (x, y) => [x, y === 700 ? 740 : y]);

describe('the apparent gap', () => {
  it('of two straight stems is the white between them', () => {
    const line = prepareLine(tall(drawnPack('II')));
    expect(apparentGapAt(line, 0, 0)).toBeCloseTo(120, 6);
    expect(apparentGapAt(line, 0, 35)).toBeCloseTo(155, 6);
    expect(apparentGapAt(line, 0, -35)).toBeCloseTo(85, 6);
  });

  it('counts no height deeper than 1.6, nor less than 0.4, of the white from stem to stem of H', () => {
    // H H leave 120: every height counts from 48 to 192. Two stems 400 apart hold no more than that, two that cross no
    // less.
    const line = prepareLine(tall(drawnPack('II', { wordSpace: [0] })));
    expect(apparentGapAt(line, 0, -300)).toBeCloseTo(48, 6);
    const apart = withPoints(tall(drawnPack('II')), (x, y) => [x, y]);
    const wide = {
      ...apart,
      glyphs: apart.glyphs.map((glyph) => (glyph.cluster === 'I' ? { ...glyph, advance: 500 } : glyph)),
    };
    expect(apparentGapAt(prepareLine(wide), 0, 0)).toBeCloseTo(192, 6);
  });

  it('rises by as much as is added to what the face gives, at every height', () => {
    const line = prepareLine(drawnPack('OI'));
    expect(apparentGapAt(line, 0, 70) - apparentGapAt(line, 0, 0)).toBeCloseTo(70, 6);
  });

  it('sees the hole over the foot of L, which nearly meets A', () => {
    const pack = drawnPack('LAVATORY'.replace(/[RY]/g, 'I'));
    const { pairs } = measureLine(pack, { tracking: 0, offsets: pack.builtIn.map(() => 0) }, at);
    expect(pairs[0]!.clearance).toBeLessThan(25);
    expect(pairs[0]!.apparentGap).toBeGreaterThan(pairs[6]!.apparentGap);
  });

  it('adds a word space to the gap of the letters beside it', () => {
    const apart = prepareLine(drawnPack('H H')),
      together = prepareLine(drawnPack('HH'));
    expect(apparentGapAt(apart, 0, 0)).toBeCloseTo(apparentGapAt(together, 0, 0) + 250, 6);
  });

  it('is met by the offset that is worked out for it, and by none at or under the least depth', () => {
    const pack = drawnPack('HOLAVTonI'),
      line = prepareLine(pack);
    fc.assert(
      fc.property(
        fc.nat(7),
        fc.integer({ min: 60, max: 600 }),
        fc.integer({ min: -100, max: 100 }),
        (index, target, tracking) => {
          const offset = offsetForGap(line, index, target, tracking)!;
          expect(apparentGapAt(line, index, offset + tracking)).toBeCloseTo(target, 1);
        },
      ),
    );
    expect(offsetForGap(line, 0, 48, 0)).toBeNull();
    expect(offsetForGap(line, 0, Infinity, 0)).toBeNull();
  });
});

describe.each(['drawn', 'lato-400', 'playfair-display-400'])('the hatch in %s', (name) => {
  const TEXT = 'HOLAVTonI';
  let pack: Pack;
  beforeAll(async () => {
    pack = name === 'drawn' ? drawnPack('HOLAV TonI') : registryPack(await registryFace(name), TEXT);
  });

  it('is exactly the white that is counted, at any total', () => {
    const line = prepareLine(pack);
    for (const total of [-400, -60, -20, 0, 45, 300]) {
      const set = { tracking: total, offsets: pack.builtIn.map(() => 0) };
      for (const { index, area, apparentGap, total: whole } of measureLine(pack, set, at).pairs) {
        const hatched = Math.abs(signedArea(Float64Array.from(pairWhite(line, index, whole))));
        expect(Math.abs(hatched / 1000 / area - 1), `${index} at ${total}`).toBeLessThan(0.002);
        expect(area).toBeCloseTo((apparentGap * (pack.vertical.ascenderTop * 1000)) / pack.unitsPerEm / 1000, 1);
      }
    }
  });
});

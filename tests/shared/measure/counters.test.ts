import { describe, expect, it } from 'vitest';
import { signedArea } from '@/shared/geometry/polygon';
import { counters, counterWidth, prepareLine } from '@/shared/measure';
import { drawnPack } from '@/tests/fixtures/drawn-pack';
import { registryFace } from '@/tests/fixtures/registry-face';
import { registryPack } from '@/tests/fixtures/registry-pack';

const shapeOf = (letter: string) => {
  const line = prepareLine(drawnPack(letter + letter));
  return line.letters[0]!;
};

/** Drawn shapes, so that areas are arithmetic by hand. */
describe('counters', () => {
  it('finds both open counters of H: 400 wide, 300 high under and over the bar', () => {
    const found = counters(shapeOf('H'));
    expect(found.map(({ kind, between, area, height }) => ({ kind, between, area, height }))).toEqual([
      { kind: 'open', between: 'sides', area: 120_000, height: 300 },
      { kind: 'open', between: 'sides', area: 120_000, height: 300 },
    ]);
    expect(counterWidth(shapeOf('H'))).toBe(400);
  });
  it('finds the closed counter of o by its contour', () => {
    const found = counters(shapeOf('o'));
    expect(found).toHaveLength(1);
    // Four alike quarters round 290,250 with corners 155,0 110,140 0,170: 4 · (155·140 + 110·170) / 2.
    expect(found[0]).toMatchObject({ kind: 'closed', area: 80_800, height: 340 });
  });
  it('finds none in I, L and T', () => {
    for (const letter of 'ILT') expect(counterWidth(shapeOf(letter)), letter).toBeNull();
  });
});

/** What the bench draws is what is counted: the outline of each counter encloses its area. */
describe.each(['lato-400', 'playfair-display-400', 'abril-fatface-400'])('outlines of counters in %s', (name) => {
  it('enclose what the measure counts, within 0.1 %', async () => {
    const found = prepareLine(registryPack(await registryFace(name), 'HamburgefonstivWKXZcdpqy')).letters.flatMap(
      counters,
    );
    expect(found.filter(({ between }) => between !== 'above-and-below').length).toBeGreaterThan(20);
    for (const { outline, area } of found)
      expect(Math.abs(signedArea(Float64Array.from(outline))) / area).toBeCloseTo(1, 3);
  });
});

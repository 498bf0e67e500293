import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { findFace, listFaces } from '@/lib/face/catalogue';
import { readFace } from '@/lib/face/read-face';

const read = (key: string, axes?: Record<string, number>) => readFace(readFileSync(findFace(key).path), { axes });

describe('readFace', () => {
  it('reads many WOFF2 files at once, each to its own', async () => {
    const keys = ['lato-400', 'arvo-700', 'inter-900', 'alegreya-400-italic', 'bitter-700', 'vollkorn-900'];
    const faces = await Promise.all(keys.map((key) => read(key)));
    expect(faces.map(({ facts }) => facts.sumHolds)).toEqual(keys.map(() => true));
    expect(faces.map(({ facts }) => facts.weight)).toEqual([400, 700, 900, 400, 700, 900]);
    expect(faces.map(({ facts }) => facts.italic)).toEqual([false, false, false, true, false, false]);
  });

  it('takes the sizes a face is drawn for from its optical-size axis (one unit is one px, CSS Fonts 4)', async () => {
    expect((await read('source-serif-4-opsz', { opsz: 36 })).facts.opticalSize).toEqual({ from: 36, to: 36 });
    expect((await read('lato-400')).facts.opticalSize).toBeNull();
  });

  it('carries the licence text where the file does', async () => {
    const { facts } = await readFace(readFileSync('node_modules/source-sans-pro/OTF/SourceSansPro-Regular.otf'));
    expect(facts.licence.text).toContain('SIL Open Font License');
    expect(facts.licence.url).toContain('scripts.sil.org/OFL');
    expect(facts).toMatchObject({
      family: 'Source Sans Pro',
      style: 'Regular',
      unitsPerEm: 1000,
      outlines: 'CFF',
      kerning: 'GPOS',
    });
  });
});

describe('the catalogue', () => {
  const faces = listFaces();

  it('has at least twelve families of several weights, of every kind that a course wants', () => {
    const weights = new Map<string, Set<number>>();
    for (const face of faces) weights.set(face.family, (weights.get(face.family) ?? new Set()).add(face.weight));
    expect([...weights.values()].filter((set) => set.size >= 3).length).toBeGreaterThanOrEqual(12);
    expect(new Set(faces.map((face) => face.design))).toEqual(
      new Set(['sans', 'serif', 'slab', 'high-contrast display', 'heavy display', 'condensed sans']),
    );
  });

  it('keeps the licence of each, and no key twice', () => {
    for (const face of faces) {
      expect(face.licence.name).toMatch(/Open Font License 1\.1|Apache License 2\.0/);
      expect(face.licence.text).toMatch(/SIL OPEN FONT LICENSE|Apache License/);
      expect(face.licence.attribution).not.toBe('');
    }
    expect(new Set(faces.map((face) => face.key)).size).toBe(faces.length);
  });

  it('tells axes as the files do', async () => {
    for (const face of faces.filter((one) => one.axes.length > 0)) {
      const { facts } = await readFace(readFileSync(face.path));
      expect(facts.axes.map(({ tag, least, most }) => ({ tag, least, most })).sort(byTag), face.key).toEqual(
        face.axes.map(({ tag, least, most }) => ({ tag, least, most })).sort(byTag),
      );
    }
  });
});

function byTag(a: { tag: string }, b: { tag: string }): number {
  return a.tag < b.tag ? -1 : 1;
}

import { type Pack, packSchema } from '@/shared/schemas/pack';

/** A line of `count` upright bars: each letter 1000 wide with a bar from 100 to 900. */
export function toyPack(count: number): Pack {
  return packSchema.parse({
    format: 'kerncrit-pack',
    version: 1,
    kind: 'font',
    text: 'I'.repeat(count),
    unitsPerEm: 1000,
    vertical: { ascender: 800, descender: -200, capHeight: 700, xHeight: 500, ascenderTop: 750 },
    face: null,
    glyphs: [{ cluster: 'I', advance: 1000, path: 'M100 0L900 0L900 700L100 700Z' }],
    letters: new Array(count).fill(0),
    builtIn: new Array(count - 1).fill(0),
    wordSpace: new Array(count - 1).fill(0),
    control: { H: null, O: null, n: null, o: null },
    ligatures: [],
  });
}

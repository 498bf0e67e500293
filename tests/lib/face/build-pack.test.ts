import { describe, expect, it } from 'vitest';
import { buildPack } from '@/lib/face/build-pack';
import { FaceError } from '@/lib/face/face-error';
import { packHash } from '@/lib/face/pack-hash';

const lato = { kind: 'catalogue', key: 'lato-400' } as const;

describe('buildPack', () => {
  it('keeps one glyph for each different letter and the control letters after them', async () => {
    const pack = await buildPack(lato, 'AVA');
    expect(pack.letters).toEqual([0, 1, 0]);
    expect(pack.glyphs.map((glyph) => glyph.cluster)).toEqual(['A', 'V', 'H', 'O', 'n', 'o']);
    expect(pack.builtIn[0]).toBeLessThan(0);
    expect(pack.builtIn[1]).toBe(pack.builtIn[0]);
  });

  it('makes a word space one gap from letter to letter', async () => {
    const pack = await buildPack(lato, '  to   be\n');
    expect(pack.text).toBe('to be');
    expect(pack.letters).toHaveLength(4);
    expect(pack.wordSpace.map((space) => space > 0)).toEqual([false, true, false]);
  });

  it('keeps an accent with its letter', async () => {
    const pack = await buildPack(lato, 'e\u0301a');
    expect(pack.text).toBe('éa');
    expect(pack.letters).toHaveLength(2);
  });

  it('says where running text would have had a ligature', async () => {
    const pack = await buildPack(lato, 'office');
    expect(pack.letters).toHaveLength(6);
    expect(pack.ligatures).toEqual([{ from: 2, to: 3, text: 'fi' }]);
  });

  it('calls an installed face by its family, not by the instance its file was cut from', async () => {
    const { face } = await buildPack({ kind: 'catalogue', key: 'montserrat-700' }, 'VA');
    expect(face).toMatchObject({ family: 'Montserrat', style: 'Bold', weight: 700 });
  });

  it('gives equal packs equal names', async () => {
    expect(packHash(await buildPack(lato, 'VAT'))).toBe(packHash(await buildPack(lato, ' VAT ')));
    expect(packHash(await buildPack(lato, 'VAT'))).not.toBe(packHash(await buildPack(lato, 'VAL')));
  });

  it.each([
    ['', 'no letter'],
    ['a'.repeat(201), '201 letters'],
    ['a\u0007b', 'U+0007 at place 2'],
    ['שלום', 'from the right'],
    ['日', 'script'],
    ['aЩ', 'no letter “Щ”'],
  ])('refuses %j', async (text, says) => {
    await expect(buildPack(lato, text)).rejects.toThrow(FaceError);
    await expect(buildPack(lato, text)).rejects.toThrow(says);
  });
});

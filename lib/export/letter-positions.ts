import type { Pack } from '@/shared/schemas/pack';

/**
 * Where each letter of a line stands in its text, in Unicode code points from 0; `end` is behind it. Spaces between
 * words belong to no letter. A letter may be several code points (e with a combining accent).
 * @throws RangeError when the letters are not those of the text.
 */
export function letterPositions(pack: Pick<Pack, 'text' | 'letters' | 'glyphs'>): { start: number; end: number }[] {
  const text = [...pack.text];
  let at = 0;
  return pack.letters.map((glyph) => {
    const letter = [...pack.glyphs[glyph]!.cluster];
    while (at < text.length && /\s/u.test(text[at]!)) at++;
    const start = at;
    at += letter.length;
    if (text.slice(start, at).join('') !== letter.join(''))
      throw new RangeError(`“${letter.join('')}” is not the letter at ${start} of “${pack.text}”.`);
    return { start, end: at };
  });
}

import { readFileSync } from 'node:fs';
import decompress from 'wawoff2/decompress.js';

/**
 * What HarfBuzz adds between two letters: the pair's advance with `kern` on less with it off, in 1/1000 em; ligatures
 * off.
 */
export async function harfbuzzPairValue(file: string, left: string, right: string): Promise<number> {
  const harfbuzz = await import('harfbuzzjs');
  const face = new harfbuzz.Face(new harfbuzz.Blob(await decompress(readFileSync(`node_modules/${file}`))), 0);
  const font = new harfbuzz.Font(face);
  const width = (kern: string): number => {
    const buffer = new harfbuzz.Buffer();
    buffer.addText(left + right);
    buffer.guessSegmentProperties();
    const features = [kern, '-liga', '-clig'].flatMap((name) => harfbuzz.Feature.fromString(name) ?? []);
    harfbuzz.shape(font, buffer, features);
    return buffer.getGlyphInfosAndPositions().reduce((sum, glyph) => sum + (glyph.xAdvance ?? 0), 0);
  };
  return ((width('+kern') - width('-kern')) * 1000) / face.upem;
}

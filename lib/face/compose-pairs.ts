import type { Pack, PackGlyph } from '@/shared/schemas/pack';
import { FaceError, quoted } from './face-error';
import { LIMITS } from './limits';
import { faceLabel } from './compose-pack';
import { verticalOf } from './face-facts';
import type { Face } from './read-face';
import { outlineOf } from './shaping/outline';
import { shapeLine, type SetLetter } from './shaping/shape-line';
import { splitLine } from './shaping/split-line';

/** Letters and built-in values for many pairs at once, in font units. `left` and `right` are indices into `glyphs`. */
export type PairTable = {
  unitsPerEm: number;
  vertical: Pack['vertical'];
  face: NonNullable<Pack['face']>;
  glyphs: PackGlyph[];
  control: Pack['control'];
  pairs: { left: number; right: number; builtIn: number }[];
};

/** Throws FaceError `bad-text` for what is no pair of letters, `no-outline` for letters that the face lacks. */
export function composePairs(face: Face, pairs: readonly string[]): PairTable {
  if (pairs.length > LIMITS.pairs)
    throw new FaceError('text-too-long', `${pairs.length} pairs were given; ${LIMITS.pairs} is the most at once.`);
  const glyphs: PackGlyph[] = [];
  const places = new Map<string, number>();
  const place = (cluster: string): number => {
    const known = places.get(cluster);
    if (known !== undefined) return known;
    const letter = only(shapeLine(face, splitLine(cluster), false));
    glyphs.push({ cluster, advance: letter.advance, path: outlineOf(face, cluster, letter.glyphs) });
    places.set(cluster, glyphs.length - 1);
    return glyphs.length - 1;
  };
  const table = pairs.map((text, index) => {
    if (text.trim() === '')
      throw new FaceError(
        'bad-text',
        `${quoted(text)} (pair ${index + 1}) is not a pair. Give two letters a line, and no empty line.`,
      );
    const line = splitLine(text);
    const [first, second] = line.letters;
    if (!first || !second || line.letters.length > 2 || first.to !== second.from || line.text.length !== second.to)
      throw new FaceError(
        'bad-text',
        `${quoted(text)} (pair ${index + 1}) is not a pair. Give two letters a line, with nothing between them.`,
      );
    const left = place(first.cluster);
    const right = place(second.cluster);
    const [a, b] = shapeLine(face, line, true);
    if (!a || !b)
      throw new FaceError('bad-text', `${quoted(text)} (pair ${index + 1}) is not a pair. Give two letters a line.`);
    return { left, right, builtIn: b.origin - a.origin - (glyphs[left]?.advance ?? 0) };
  });
  const controlPlace = (letter: string) => (face.font.nominalGlyph(letter.codePointAt(0) ?? 0) ? place(letter) : null);
  const control = { H: controlPlace('H'), O: controlPlace('O'), n: controlPlace('n'), o: controlPlace('o') };
  return {
    unitsPerEm: face.facts.unitsPerEm,
    vertical: verticalOf(face),
    face: faceLabel(face),
    glyphs,
    control,
    pairs: table,
  };
}

function only(letters: SetLetter[]): SetLetter {
  const [letter] = letters;
  if (!letter) throw new FaceError('bad-text', 'A letter is missing.');
  return letter;
}

import { flatten } from '@/shared/outline/flatten';
import { parsePath } from '@/shared/outline/parse-path';
import { stemSlant } from '@/shared/outline/slant';
import type { Pack, PackGlyph } from '@/shared/schemas/pack';
import type { Face } from './read-face';
import { verticalOf } from './face-facts';
import { usualOf } from './own-kerning';
import { outlineOf } from './shaping/outline';
import { ligaturesOf, shapeLine, type SetLetter } from './shaping/shape-line';
import { splitLine, type Line } from './shaping/split-line';

/** The pack of a line in an opened face. Throws FaceError; see buildPack for the way in. */
export function composePack(face: Face, text: string): Pack {
  const line = splitLine(text);
  const plain = shapeLine(face, line, false);
  const kerned = shapeLine(face, line, true);
  const store = glyphStore(face);
  const letters = line.letters.map((letter, index) => store.add(letter.cluster, at(plain, index)));
  const wordSpace = pairs(line, (index) =>
    Math.round(at(plain, index + 1).origin - at(plain, index).origin - at(plain, index).advance),
  );
  const builtIn = pairs(
    line,
    (index) =>
      Math.round(at(kerned, index + 1).origin - at(kerned, index).origin) -
      at(plain, index).advance -
      (wordSpace[index] ?? 0),
  );
  const control = { H: store.control('H'), O: store.control('O'), n: store.control('n'), o: store.control('o') };
  const pack: Pack = {
    format: 'kerncrit-pack',
    version: 2,
    kind: 'font',
    text: line.text,
    unitsPerEm: face.facts.unitsPerEm,
    vertical: verticalOf(face),
    slant: slantOf(face, store.glyphs, control),
    face: faceLabel(face),
    glyphs: store.glyphs,
    letters,
    builtIn,
    wordSpace,
    control,
    ligatures: ligaturesOf(face, line),
  };
  const usual = usualOf(face, pack);
  return usual === undefined ? pack : { ...pack, usual };
}

/**
 * How far stems lean over 1000 of height: as H or n show it, since faces state another angle than they are drawn with,
 * and variable ones state one for all their slants; as the face states it where it has neither.
 */
function slantOf({ facts }: Face, glyphs: readonly PackGlyph[], { H, n }: Pack['control']): number {
  const letter = H !== null ? 'H' : 'n';
  const glyph = glyphs[H ?? n ?? -1];
  const slant = glyph
    ? stemSlant(letter, flatten(parsePath(glyph.path), 1000 / facts.unitsPerEm))
    : Math.tan((-facts.italicAngle * Math.PI) / 180);
  return Math.round(1000 * slant) + 0;
}

function pairs(line: Line, value: (index: number) => number): number[] {
  return line.letters.slice(1).map((_, index) => value(index));
}

function at(letters: SetLetter[], index: number): SetLetter {
  const letter = letters[index];
  if (!letter) throw new RangeError(`No letter ${index} in a line of ${letters.length}.`);
  return letter;
}

/** Each different drawing of a letter once, in the order of the line, control letters last. */
function glyphStore(face: Face) {
  const glyphs: PackGlyph[] = [];
  const places = new Map<string, number>();
  const add = (cluster: string, letter: SetLetter): number => {
    const key = JSON.stringify([cluster, letter.glyphs, letter.advance]);
    const known = places.get(key);
    if (known !== undefined) return known;
    glyphs.push({ cluster, advance: letter.advance, path: outlineOf(face, cluster, letter.glyphs) });
    places.set(key, glyphs.length - 1);
    return glyphs.length - 1;
  };
  const control = (letter: string): number | null => {
    if (!face.font.nominalGlyph(letter.codePointAt(0) ?? 0)) return null;
    return add(letter, at(shapeLine(face, splitLine(letter), false), 0));
  };
  return { glyphs, add, control };
}

export function faceLabel({ facts }: Face): NonNullable<Pack['face']> {
  const axes = Object.fromEntries(facts.axes.map((axis) => [axis.tag, axis.value]));
  return {
    family: facts.family,
    style: facts.style,
    weight: facts.weight,
    italic: facts.italic,
    axes,
    drawnFor: facts.opticalSize,
  };
}

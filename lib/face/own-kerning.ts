import type { LetterShape } from '@/shared/measure/letter-shape';
import { prepareLetters } from '@/shared/measure/prepared-face';
import { MeasureError } from '@/shared/measure-error';
import type { Pack, PackGlyph } from '@/shared/schemas/pack';
import { isCovered } from '@/shared/usual-range/covered';
import { readOwnKerning, sharesByOwnKerning, type OwnKerning } from '@/shared/usual-range/own-kerning';
import { faceOf, inThousandths, type UsualFace } from '@/shared/usual-range/usual-range';
import { FaceError } from './face-error';
import { verticalOf } from './face-facts';
import type { Face } from './read-face';
import { drawnOutlineOf, outlineOf } from './shaping/outline';
import { shapeLine } from './shaping/shape-line';

/** How a face's designer kerns, and the shape of every letter read so far. */
type FaceKerning = { usual: UsualFace; own: OwnKerning | null; shapes: Map<string, LetterShape> };

/** Letters whose pairs show best how a designer kerns: left ones and right ones, each with each. */
const LEFTS = [...'ATVLPKryo'];
const RIGHTS = [...'ATVOaovy'];
const CONTROL = { H: 'H', O: 'O', n: 'n', o: 'o' } as const;

const known = new WeakMap<Face, FaceKerning | null>();

/**
 * Read once for an opened face. Null for a face without the letters that are asked of it, or with nothing to count in.
 */
function kerningOf(face: Face): FaceKerning | null {
  const made = known.get(face);
  if (made !== undefined) return made;
  const read = readKerning(face);
  known.set(face, read);
  return read;
}

/**
 * The usual range of every pair of a line, with the face's own kerning of other pairs; undefined where there is none to
 * read.
 */
export function usualOf(face: Face, pack: Omit<Pack, 'usual'>): Pack['usual'] {
  const kerning = kerningOf(face);
  if (kerning === null) return undefined;
  const letters = prepareLetters(pack);
  const shapeOf = (index: number) => cachedShape(kerning.shapes, pack.glyphs[index]!, () => letters.shapeOf(index));
  return pack.wordSpace.map((wordSpace, index) => {
    const [left, right] = [pack.letters[index]!, pack.letters[index + 1]!];
    if (kerning.own === null || wordSpace > 0) return null;
    const [a, b] = [pack.glyphs[left]!.cluster, pack.glyphs[right]!.cluster];
    if (!isCovered(a, b)) return null;
    return inThousandths(
      sharesByOwnKerning(kerning.usual, kerning.own, shapeOf(left), shapeOf(right)),
      kerning.usual.features.unit,
    );
  });
}

function readKerning(face: Face): FaceKerning | null {
  try {
    const letters = [...new Set([...Object.values(CONTROL), ...LEFTS, ...RIGHTS])];
    const asked = LEFTS.flatMap((left) =>
      RIGHTS.filter((right) => !(isSmall(left) && !isSmall(right))).map((right) => ({ left, right })),
    );
    const { glyphs, kerns } = shaped(face, letters, asked);
    const place = (letter: string) => letters.indexOf(letter);
    const source = {
      unitsPerEm: face.facts.unitsPerEm,
      vertical: verticalOf(face),
      glyphs,
      control: { H: place('H'), O: place('O'), n: place('n'), o: place('o') },
    };
    const prepared = prepareLetters(source);
    const usual = faceOf(source, prepared);
    if (usual === null) return null;
    const scale = 1000 / face.facts.unitsPerEm;
    const pairs = asked.map(({ left, right }, index) => ({
      left: prepared.shapeOf(place(left)),
      right: prepared.shapeOf(place(right)),
      kern: kerns[index]! * scale,
    }));
    const shapes = new Map<string, LetterShape>();
    glyphs.forEach((glyph, index) => cachedShape(shapes, glyph, () => prepared.shapeOf(index)));
    return { usual, own: readOwnKerning(usual, pairs), shapes };
  } catch (error) {
    // A face that lacks a letter, or draws none, is foretold from its shapes alone.
    if (error instanceof FaceError || error instanceof MeasureError) return null;
    throw error;
  }
}

function cachedShape(
  shapes: FaceKerning['shapes'],
  { advance, path }: PackGlyph,
  make: () => LetterShape,
): LetterShape {
  const key = `${advance} ${path}`;
  const shape = shapes.get(key) ?? make();
  shapes.set(key, shape);
  return shape;
}

/** All letters, and the built-in value of every asked pair, from one line that sets the pairs one after the other. */
function shaped(face: Face, letters: string[], asked: { left: string; right: string }[]) {
  const text = letters.join('') + asked.map(({ left, right }) => left + right).join('');
  const line = {
    text,
    letters: [...text].map((cluster, index) => ({ cluster, from: index, to: index + 1, script: 'Latn' })),
  };
  const plain = shapeLine(face, line, false),
    kerned = shapeLine(face, line, true);
  const step = (set: typeof plain, index: number) => set[index + 1]!.origin - set[index]!.origin;
  const glyphs = letters.map((cluster, index): PackGlyph => {
    // Sides are the same before contours are united; only the control letters are asked for their insides.
    const outline = cluster in CONTROL ? outlineOf : drawnOutlineOf;
    return { cluster, advance: plain[index]!.advance, path: outline(face, cluster, plain[index]!.glyphs) };
  });
  const kerns = asked.map((_, index) => {
    const at = letters.length + 2 * index;
    return step(kerned, at) - step(plain, at);
  });
  return { glyphs, kerns };
}

function isSmall(letter: string): boolean {
  return letter !== letter.toUpperCase();
}

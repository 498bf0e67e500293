import type { LetterShape } from '@/shared/measure/letter-shape';
import { prepareLetters } from '@/shared/measure/prepared-face';
import { MeasureError } from '@/shared/measure-error';
import type { Pack, PackGlyph } from '@/shared/schemas/pack';
import { isCovered } from '@/shared/usual-range/covered';
import { ownHand, sharesByHand, type OwnHand } from '@/shared/usual-range/own-hand';
import { faceOf, inThousandths, type UsualFace } from '@/shared/usual-range/usual-range';
import { FaceError } from './face-error';
import { verticalOf } from './face-facts';
import type { Face } from './read-face';
import { drawnOutlineOf, outlineOf } from './shaping/outline';
import { shapeLine } from './shaping/shape-line';

/** The hand of a face's designer, and every letter looked at so far, by how it is drawn. */
type FaceHand = { usual: UsualFace; hand: OwnHand | null; shapes: Map<string, LetterShape> };

/** Letters whose pairs tell most of how a designer kerns: left ones and right ones, each with each. */
const LEFTS = [...'ATVLPKryo'];
const RIGHTS = [...'ATVOaovy'];
const CONTROL = { H: 'H', O: 'O', n: 'n', o: 'o' } as const;

const known = new WeakMap<Face, FaceHand | null>();

/**
 * Read once for an opened face. Null for a face without the letters that are asked of it, or with nothing to count in.
 */
function handOf(face: Face): FaceHand | null {
  const made = known.get(face);
  if (made !== undefined) return made;
  const read = readHand(face);
  known.set(face, read);
  return read;
}

/**
 * The usual range of every pair of a line, with the face's own kerning of other pairs; undefined where there is none to
 * read.
 */
export function usualOf(face: Face, pack: Omit<Pack, 'usual'>): Pack['usual'] {
  const own = handOf(face);
  if (own === null) return undefined;
  const letters = prepareLetters(pack);
  const shapeOf = (index: number) => keptShape(own.shapes, pack.glyphs[index]!, () => letters.shapeOf(index));
  return pack.wordSpace.map((wordSpace, index) => {
    const [left, right] = [pack.letters[index]!, pack.letters[index + 1]!];
    if (own.hand === null || wordSpace > 0) return null;
    const [a, b] = [pack.glyphs[left]!.cluster, pack.glyphs[right]!.cluster];
    if (!isCovered(a, b)) return null;
    return inThousandths(sharesByHand(own.usual, own.hand, shapeOf(left), shapeOf(right)), own.usual.look.unit);
  });
}

function readHand(face: Face): FaceHand | null {
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
    glyphs.forEach((glyph, index) => keptShape(shapes, glyph, () => prepared.shapeOf(index)));
    return { usual, hand: ownHand(usual, pairs), shapes };
  } catch (error) {
    // A face that lacks a letter, or draws none, is foretold from its shapes alone.
    if (error instanceof FaceError || error instanceof MeasureError) return null;
    throw error;
  }
}

function keptShape(shapes: FaceHand['shapes'], { advance, path }: PackGlyph, make: () => LetterShape): LetterShape {
  const key = `${advance} ${path}`;
  const known = shapes.get(key) ?? make();
  shapes.set(key, known);
  return known;
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

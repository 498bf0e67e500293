import type { Pack } from '@/shared/schemas/pack';
import type { PairGroup } from '@/shared/schemas/measure';
import { visibleWhite, type VisibleWhite } from './apparent-gap';
import type { LetterShape } from './letter-shape';
import { isAllCapitals, pairGroup } from './pair-group';
import { prepareFace, type PreparedFace } from './prepared-face';
import type { StemGaps } from './stem-gap';

export type PreparedPair = {
  left: LetterShape;
  right: LetterShape;
  white: VisibleWhite;
  /** Built-in kerning and white space inside the pair, 1/1000 em. */
  builtIn: number;
  wordSpace: number;
  group: PairGroup;
};

/** A pack made ready: everything about a line that does not change while it is spaced. */
export type PreparedLine = {
  pack: Pack;
  face: PreparedFace;
  clusters: string[];
  letters: LetterShape[];
  pairs: PreparedPair[];
  stem: StemGaps | null;
  /**
   * Median apparent gap of the face's control pairs without kerning, 1/1000 em; of its capitals alone in an all-capital
   * line.
   */
  faceReference: number | null;
};

const ready = new WeakMap<Pack, PreparedLine>();

/** Makes a pack ready for measuring, once; the same object gives the same answer back. */
export function prepareLine(pack: Pack): PreparedLine {
  const known = ready.get(pack);
  if (known) return known;
  const made = prepare(pack);
  ready.set(pack, made);
  return made;
}

function prepare(pack: Pack): PreparedLine {
  const scale = 1000 / pack.unitsPerEm;
  const face = prepareFace(pack);
  const letters = pack.letters.map(face.shapeOf);
  const clusters = pack.letters.map((index) => pack.glyphs[index]!.cluster);
  const allCapitals = isAllCapitals(clusters);
  const pairs = letters.slice(1).map((right, index): PreparedPair => {
    const left = letters[index]!;
    const wordSpace = (pack.wordSpace[index] ?? 0) * scale;
    return {
      left,
      right,
      white: visibleWhite(left, right, face.depths),
      builtIn: (pack.builtIn[index] ?? 0) * scale,
      wordSpace,
      group: pairGroup(clusters[index]!, clusters[index + 1]!, wordSpace, allCapitals),
    };
  });
  return {
    pack,
    face,
    clusters,
    letters,
    pairs,
    stem: face.stem,
    faceReference: allCapitals ? face.capitalsGap : face.controlGap,
  };
}

import { median } from '@/shared/stats/median';
import { bandsUpTo } from '@/shared/outline/grid';
import type { Pack } from '@/shared/schemas/pack';
import type { PairGroup } from '@/shared/schemas/measure';
import { apparentGap, seenGap, type SeenGap } from './apparent-gap';
import { areaGap, type AreaGap } from './area';
import { MeasureError } from './errors';
import { letterShape, type LetterShape } from './letter-shape';
import { isAllCapitals, pairGroup } from './pair-group';
import { stemGaps, type StemGaps } from './stem-gap';

export type PreparedPair = {
  left: LetterShape;
  right: LetterShape;
  seen: SeenGap;
  area: AreaGap;
  /** Built-in kerning and white space inside the pair, 1/1000 em. */
  builtIn: number;
  wordSpace: number;
  group: PairGroup;
};

/** A pack made ready: everything about a line that does not change while it is spaced. */
export type PreparedLine = {
  pack: Pack;
  clusters: string[];
  letters: LetterShape[];
  pairs: PreparedPair[];
  stem: StemGaps | null;
  /** Median apparent gap of the face's control pairs without kerning, 1/1000 em. */
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
  const bands = bandsUpTo(pack.vertical.ascenderTop * scale);
  const shapes = new Map<number, LetterShape>();
  const shapeOf = (index: number): LetterShape => {
    const glyph = pack.glyphs[index];
    if (!glyph) throw new MeasureError('bad-pack', `The pack names letter shape ${index}, but holds ${pack.glyphs.length}. Build it again from its face.`, String(index));
    const shape = shapes.get(index) ?? letterShape(glyph, pack.unitsPerEm, bands);
    shapes.set(index, shape);
    return shape;
  };
  const letters = pack.letters.map(shapeOf);
  const clusters = pack.letters.map((index) => pack.glyphs[index]!.cluster);
  const allCapitals = isAllCapitals(clusters);
  const pairs = letters.slice(1).map((right, index): PreparedPair => {
    const left = letters[index]!;
    const wordSpace = (pack.wordSpace[index] ?? 0) * scale;
    return {
      left,
      right,
      seen: seenGap(left.seen.right, right.seen.left),
      area: areaGap(left, right),
      builtIn: (pack.builtIn[index] ?? 0) * scale,
      wordSpace,
      group: pairGroup(clusters[index]!, clusters[index + 1]!, wordSpace, allCapitals),
    };
  });
  const { H, O, n, o } = pack.control;
  const [shapeH, shapeO, shapeN, shapeSmallO] = [H, O, n, o].map((index) => (index === null ? null : shapeOf(index)));
  return {
    pack,
    clusters,
    letters,
    pairs,
    stem: shapeH ? stemGaps(shapeH) : null,
    faceReference: controlReference(shapeH ?? null, shapeO ?? null, shapeN ?? null, shapeSmallO ?? null, allCapitals),
  };
}

/** Median apparent gap over HH HO OH OO Hn Ho On Oo nn no on oo; over the first four for an all-capital line. */
function controlReference(H: LetterShape | null, O: LetterShape | null, n: LetterShape | null, o: LetterShape | null, allCapitals: boolean): number | null {
  const capitals = [H, O].filter((shape) => shape !== null), small = [n, o].filter((shape) => shape !== null);
  const pairs = [
    ...capitals.flatMap((left) => capitals.map((right) => [left, right] as const)),
    ...(allCapitals ? [] : capitals.flatMap((left) => small.map((right) => [left, right] as const))),
    ...(allCapitals ? [] : small.flatMap((left) => small.map((right) => [left, right] as const))),
  ];
  return pairs.length === 0 ? null : median(pairs.map(([left, right]) => apparentGap(seenGap(left.seen.right, right.seen.left), 0)));
}

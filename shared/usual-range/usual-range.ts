import type { LetterShape } from '@/shared/measure/letter-shape';
import type { PreparedFace } from '@/shared/measure/prepared-face';
import type { PreparedLine } from '@/shared/measure/prepared-line';
import type { Pack } from '@/shared/schemas/pack';
import { isCovered } from './covered';
import { featuresOfFace, type FaceFeatures } from './face-features';
import { readNet } from './net-file';
import type { Part } from './net';
import { pairInputs, sideInputs } from './pair-inputs';
import { judgeLine, type LineJudgement, type SetLine } from './judge-line';
import type { UsualRange } from './range';
import { faceParts, sharesOf, sideParts, type Fit, type Shares, type SideParts } from './shares';
import { FIT } from './weights';

/** The usual range of every pair of a line, made once; null where the fit is silent. See README.md in this folder. */
export function usualRanges(line: PreparedLine): (UsualRange | null)[] {
  // A pack made with the face available includes what the face's own kerning adds; earlier ones are read from their
  // shapes.
  if (line.pack.usual) return line.pack.usual;
  const known = ranges.get(line);
  if (known) return known;
  const face = faceOf(line.pack, line.face);
  const made = line.pairs.map(({ left, right, wordSpace }, index) =>
    wordSpace > 0 || face === null
      ? null
      : rangeOf(
          face,
          { shape: left, cluster: line.clusters[index]! },
          { shape: right, cluster: line.clusters[index + 1]! },
        ),
  );
  ranges.set(line, made);
  return made;
}

/** A line as set beside its usual ranges. Totals, gaps and clearances of its pairs, 1/1000 em. */
export function judgePrepared(
  line: PreparedLine,
  set: Pick<SetLine, 'totals' | 'tracking' | 'gaps' | 'clearances' | 'sizePx'>,
): LineJudgement {
  const features = faceOf(line.pack, line.face)?.features ?? null;
  return judgeLine({
    ...set,
    ranges: usualRanges(line),
    stemGap: features?.stemGap ?? null,
    referenceGap: features?.unit ?? null,
  });
}

const ranges = new WeakMap<PreparedLine, (UsualRange | null)[]>();

export type NamedShape = { shape: LetterShape; cluster: string };

/** The usual range of one pair from its shapes; null where the fit is silent. */
export function rangeOf(face: UsualFace, left: NamedShape, right: NamedShape): UsualRange | null {
  if (!isCovered(left.cluster, right.cluster)) return null;
  return inThousandths(sharesOfPair(face, left.shape, right.shape), face.features.unit);
}

/** A face made ready for its usual ranges. */
export type UsualFace = { features: FaceFeatures; parts: Part[]; sides: Record<Side, WeakMap<LetterShape, UsualSide>> };

type Side = 'left' | 'right';
type UsualSide = { inputs: Float64Array; parts: SideParts };

/** What is needed of a pack or a table of pairs. */
type FaceSource = Pick<Pack, 'unitsPerEm' | 'vertical' | 'control'>;

type Letters = Pick<PreparedFace, 'shapeOf'>;

const faces = new WeakMap<Letters, UsualFace | null>();

/** Null for a face without its control letters. */
export function faceOf(source: FaceSource, prepared: Letters): UsualFace | null {
  const known = faces.get(prepared);
  if (known !== undefined) return known;
  const made = makeFace(source, prepared);
  faces.set(prepared, made);
  return made;
}

function makeFace({ unitsPerEm, vertical, control }: FaceSource, { shapeOf }: Letters): UsualFace | null {
  const { H, O, n, o } = control;
  if (H === null || O === null || n === null || o === null) return null;
  const scale = 1000 / unitsPerEm;
  const features = featuresOfFace(
    { H: shapeOf(H), O: shapeOf(O), n: shapeOf(n), o: shapeOf(o) },
    {
      capHeight: vertical.capHeight * scale,
      xHeight: vertical.xHeight * scale,
      ascenderTop: vertical.ascenderTop * scale,
    },
  );
  if (features === null) return null;
  return {
    features,
    parts: faceParts(readFit(), features.inputs),
    sides: { left: new WeakMap(), right: new WeakMap() },
  };
}

/** The same in reference gaps of the face, before rounding. */
export function sharesOfPair(face: UsualFace, left: LetterShape, right: LetterShape): Shares {
  return sharesOf(
    readFit(),
    sideOf(face, left, 'right').parts,
    sideOf(face, right, 'left').parts,
    face.parts,
    pairInputs(face.features, left, right),
  );
}

/** One side of a letter as input for the fit, computed once for a face. */
export function sideOf(face: UsualFace, shape: LetterShape, side: Side): UsualSide {
  const known = face.sides[side].get(shape);
  if (known) return known;
  const inputs = sideInputs(face.features, shape, side);
  const made = { inputs, parts: sideParts(readFit(), inputs) };
  face.sides[side].set(shape, made);
  return made;
}

/** Whole thousandths of an em, ends in their order. */
export function inThousandths(shares: Shares, unit: number): UsualRange {
  const whole = (share: number) => Math.floor(share * unit + 0.5) + 0;
  return {
    low: whole(shares.low),
    halfLow: whole(shares.halfLow),
    middle: whole(shares.middle),
    mean: whole(shares.mean),
    halfHigh: whole(shares.halfHigh),
    high: whole(shares.high),
    leftAlone: Math.floor(shares.leftAlone * 100 + 0.5) / 100,
  };
}

let read: Fit | undefined;

/** The stored fit, read once. */
export function readFit(): Fit {
  return (read ??= { nets: FIT.nets.map(readNet), stretch: FIT.stretch });
}

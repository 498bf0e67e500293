import { heightsUpTo, type Heights } from '@/shared/outline/edge-profile';
import { flatten } from '@/shared/outline/flatten';
import { parsePath } from '@/shared/outline/parse-path';
import { stemSlant } from '@/shared/outline/slant';
import type { Pack } from '@/shared/schemas/pack';
import { median } from '@/shared/stats/median';
import { apparentGap, depthsOf, visibleWhite, type Depths } from './apparent-gap';
import { counterWidth } from './counters';
import { MeasureError } from '../measure-error';
import { letterShape, type LetterShape } from './letter-shape';
import { nearGap, seenGap } from './near-gap';
import { stemGaps, stemToStem, type StemGaps } from './stem-gap';

/** A face made ready for measuring; all lengths in 1/1000 em. */
export type PreparedFace = {
  heights: Heights;
  /** How far a stem leans to the right for each unit of height; 0 for an upright. */
  slant: number;
  capHeight: number;
  xHeight: number;
  stem: StemGaps | null;
  /** Between which depths white counts at each height. */
  depths: Depths;
  /**
   * Median apparent gap of the control pairs HH HO OH OO Hn Ho On Oo nn no on oo, without kerning; null without control
   * letters.
   */
  controlGap: number | null;
  /** The same of HH HO OH OO alone: what an all-capital line is held against. */
  capitalsGap: number | null;
  /** The same of all control pairs by the near-weighted mean: the unit of what is foretold from shapes. */
  reference: number | null;
  /** Counter of n, else of H: the white inside that the white between is held against. */
  controlCounter: number | null;
  /** The shape of glyph `index` of the pack, made once. */
  shapeOf: (index: number) => LetterShape;
};

type FaceSource = Pick<Pack, 'unitsPerEm' | 'vertical' | 'glyphs' | 'control' | 'slant'>;

/** @throws MeasureError `no-outline` or `bad-path` for a control letter that cannot be measured. */
export function prepareFace(source: FaceSource): PreparedFace {
  const scale = 1000 / source.unitsPerEm;
  const { heights, slant, shapeOf } = prepareLetters(source);
  const control = (index: number | null) => (index === null ? [] : [shapeOf(index)]);
  const H = control(source.control.H),
    capitals = [...H, ...control(source.control.O)];
  const n = control(source.control.n),
    small = [...n, ...control(source.control.o)];
  const counters = [...n, ...H].map(counterWidth).filter((width) => width !== null);
  const stem = H[0] ? stemGaps(H[0]) : null;
  const depths = depthsOf(stem?.stemToStem ?? (n[0] ? stemToStem(n[0], 0.2, 0.45) : null));
  const apparent = (pairs: Pair[]) =>
    medianOf(pairs.map(([left, right]) => apparentGap(visibleWhite(left, right, depths), 0)));
  const inCapitals = pairsOf(capitals, capitals),
    inAll = [...inCapitals, ...pairsOf(capitals, small), ...pairsOf(small, small)];
  return {
    heights,
    slant,
    capHeight: source.vertical.capHeight * scale,
    xHeight: source.vertical.xHeight * scale,
    stem,
    depths,
    controlGap: apparent(inAll),
    capitalsGap: apparent(inCapitals),
    reference: medianOf(inAll.map(([left, right]) => nearGap(seenGap(left, right), 0))),
    controlCounter: counters[0] ?? null,
    shapeOf,
  };
}

/** The letters of a face alone, for callers that ask nothing of the face as a whole. */
export function prepareLetters(source: FaceSource): Pick<PreparedFace, 'heights' | 'slant' | 'shapeOf'> {
  const heights = heightsUpTo(source.vertical.ascenderTop * (1000 / source.unitsPerEm)),
    slant = slantOf(source);
  const shapes: (LetterShape | undefined)[] = [];
  const shapeOf = (index: number): LetterShape => {
    const glyph = source.glyphs[index];
    if (!glyph)
      throw new MeasureError(
        'bad-pack',
        `The pack names letter shape ${index}, but holds ${source.glyphs.length}. Build it again from its face.`,
        String(index),
      );
    return (shapes[index] ??= letterShape(glyph, { unitsPerEm: source.unitsPerEm, heights, slant }));
  };
  return { heights, slant, shapeOf };
}

/** What the pack says; of a pack of the first version, which says nothing, what its H or n shows. */
function slantOf({ slant, glyphs, control, unitsPerEm }: FaceSource): number {
  if (slant !== undefined) return slant / 1000;
  const letter = control.H !== null ? 'H' : 'n';
  const glyph = glyphs[control[letter] ?? -1];
  return glyph ? stemSlant(letter, flatten(parsePath(glyph.path), 1000 / unitsPerEm)) : 0;
}

type Pair = [LetterShape, LetterShape];

function pairsOf(left: LetterShape[], right: LetterShape[]): Pair[] {
  return left.flatMap((a) => right.map((b): Pair => [a, b]));
}

function medianOf(values: number[]): number | null {
  return values.length === 0 ? null : median(values);
}

import { bandsUpTo } from '@/shared/outline/grid';
import type { Pack } from '@/shared/schemas/pack';
import { median } from '@/shared/stats/median';
import { apparentGap, seenGap } from './apparent-gap';
import { counterWidth } from './counters';
import { MeasureError } from './errors';
import { letterShape, type LetterShape } from './letter-shape';
import { stemGaps, type StemGaps } from './stem-gap';

/** A face made ready for measuring; all lengths in 1/1000 em. */
export type PreparedFace = {
  bands: number;
  capHeight: number;
  xHeight: number;
  stem: StemGaps | null;
  /** Median apparent gap of the control pairs HH HO OH OO Hn Ho On Oo nn no on oo, without kerning; null without control letters. */
  reference: number | null;
  /** The same of HH HO OH OO alone: what an all-capital line is held against. */
  capitalsReference: number | null;
  /** Counter of n, else of H: the white inside that the white between is held against. */
  controlCounter: number | null;
  /** The shape of glyph `index` of the pack, made once. */
  shapeOf: (index: number) => LetterShape;
};

/** @throws MeasureError `no-outline` or `bad-path` for a control letter that cannot be measured. */
export function prepareFace(source: Pick<Pack, 'unitsPerEm' | 'vertical' | 'glyphs' | 'control'>): PreparedFace {
  const scale = 1000 / source.unitsPerEm;
  const bands = bandsUpTo(source.vertical.ascenderTop * scale);
  const shapes: (LetterShape | undefined)[] = [];
  const shapeOf = (index: number): LetterShape => {
    const glyph = source.glyphs[index];
    if (!glyph)
      throw new MeasureError(
        'bad-pack',
        `The pack names letter shape ${index}, but holds ${source.glyphs.length}. Build it again from its face.`,
        String(index),
      );
    return (shapes[index] ??= letterShape(glyph, source.unitsPerEm, bands));
  };
  const control = (index: number | null) => (index === null ? [] : [shapeOf(index)]);
  const H = control(source.control.H),
    capitals = [...H, ...control(source.control.O)];
  const n = control(source.control.n),
    small = [...n, ...control(source.control.o)];
  const counters = [...n, ...H].map(counterWidth).filter((width) => width !== null);
  return {
    bands,
    capHeight: source.vertical.capHeight * scale,
    xHeight: source.vertical.xHeight * scale,
    stem: H[0] ? stemGaps(H[0]) : null,
    reference: middleGap([...pairsOf(capitals, capitals), ...pairsOf(capitals, small), ...pairsOf(small, small)]),
    capitalsReference: middleGap(pairsOf(capitals, capitals)),
    controlCounter: counters[0] ?? null,
    shapeOf,
  };
}

function pairsOf(left: LetterShape[], right: LetterShape[]): [LetterShape, LetterShape][] {
  return left.flatMap((a) => right.map((b): [LetterShape, LetterShape] => [a, b]));
}

function middleGap(pairs: [LetterShape, LetterShape][]): number | null {
  return pairs.length === 0
    ? null
    : median(pairs.map(([left, right]) => apparentGap(seenGap(left.seen.right, right.seen.left), 0)));
}

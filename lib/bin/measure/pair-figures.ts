import type { PairTable } from '@/lib/face/compose-pairs';
import { apparentGap, visibleWhite, whiteArea } from '@/shared/measure/apparent-gap';
import { clearance } from '@/shared/measure/clearance';
import { prepareFace, type PreparedFace } from '@/shared/measure/prepared-face';
import { round2 } from '@/shared/measure/round';
import { faceOf, rangeOf, type NamedShape, type UsualFace } from '@/shared/usual-range/usual-range';
import { centreOf, type UsualRange } from '@/shared/usual-range/range';

/** What is printed of a pair, all in 1/1000 em and, except `kern` and `suggestion`, measured without kerning. */
export type PairFigures = {
  pair: string;
  /** Of the left letter. */
  advance: number;
  /** Built-in kerning, as a browser applies it. */
  kern: number;
  apparentGap: number;
  /** The same white as an area, thousandths of (1/1000 em)². */
  area: number;
  clearance: number;
  /** The built-in kerning expected of a designer, the centre of the usual range; null where that is silent. */
  suggestion: number | null;
  /** Total that designers would usually give the pair; null where the fit is silent. */
  usual: UsualRange | null;
};

export function pairFigures(table: PairTable): PairFigures[] {
  const scale = 1000 / table.unitsPerEm;
  const face = prepareFace(table),
    usualFace = faceOf(table, face);
  const known = new Map<string, Pick<PairFigures, 'apparentGap' | 'area' | 'clearance' | 'suggestion' | 'usual'>>();
  return table.pairs.map(({ left, right, builtIn }) => {
    const a = { shape: face.shapeOf(left), cluster: table.glyphs[left]!.cluster },
      b = { shape: face.shapeOf(right), cluster: table.glyphs[right]!.cluster };
    const key = `${left} ${right}`;
    const measured = known.get(key) ?? measure(face, usualFace, a, b);
    known.set(key, measured);
    const pair = a.cluster + b.cluster;
    return { pair, advance: round2(a.shape.advance), kern: round2(builtIn * scale), ...measured };
  });
}

function measure(face: PreparedFace, ranges: UsualFace | null, left: NamedShape, right: NamedShape) {
  const { shape: a } = left,
    { shape: b } = right;
  const usual = ranges === null ? null : rangeOf(ranges, left, right);
  const white = visibleWhite(a, b, face.depths);
  return {
    apparentGap: round2(apparentGap(white, 0)),
    area: round2(whiteArea(white, 0) / 1000),
    clearance: round2(clearance(a, b, a.advance).distance),
    suggestion: usual === null ? null : centreOf(usual),
    usual,
  };
}

import type { PairTable } from '@/lib/face/compose-pairs';
import { nearGap, seenGap } from '@/shared/measure/near-gap';
import { areaGap, meanWhite } from '@/shared/measure/area';
import { clearance } from '@/shared/measure/clearance';
import type { LetterShape } from '@/shared/measure/letter-shape';
import { practiceKerning } from '@/shared/measure/practice';
import { prepareFace, type PreparedFace } from '@/shared/measure/prepared-face';
import { round2 } from '@/shared/measure/round';

/** What is printed of a pair, all in 1/1000 em and, but for `kern` and `suggestion`, as the letters stand without kerning. */
export type PairFigures = {
  pair: string;
  /** Of the left letter. */
  advance: number;
  /** Built-in kerning, as a browser applies it. */
  kern: number;
  apparentGap: number;
  /** White between the letters to the reach, divided by the height it spans. */
  area: number;
  clearance: number;
  /** The built-in kerning that the measure expects of a designer; null for a face without control letters. */
  suggestion: number | null;
};

export function pairFigures(table: PairTable): PairFigures[] {
  const scale = 1000 / table.unitsPerEm;
  const face = prepareFace(table);
  const known = new Map<string, Pick<PairFigures, 'apparentGap' | 'area' | 'clearance' | 'suggestion'>>();
  return table.pairs.map(({ left, right, builtIn }) => {
    const a = face.shapeOf(left),
      b = face.shapeOf(right);
    const key = `${left} ${right}`;
    const measured = known.get(key) ?? measure(face, a, b);
    known.set(key, measured);
    const pair = table.glyphs[left]!.cluster + table.glyphs[right]!.cluster;
    return { pair, advance: round2(a.advance), kern: round2(builtIn * scale), ...measured };
  });
}

function measure(face: PreparedFace, left: LetterShape, right: LetterShape) {
  const expected = practiceKerning(face, left, right);
  const seen = seenGap(left, right);
  return {
    apparentGap: round2(nearGap(seen, 0)),
    area: round2(meanWhite(areaGap(left, right), 0)),
    clearance: round2(clearance(left, right, left.advance).distance),
    suggestion: expected === null ? null : round2(expected),
  };
}

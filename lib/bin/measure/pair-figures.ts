import type { PairTable } from '@/lib/face/compose-pairs';
import { apparentGap, seenGap } from '@/shared/measure/apparent-gap';
import { areaGap, meanWhite } from '@/shared/measure/area';
import { clearance } from '@/shared/measure/clearance';
import { letterShape, type LetterShape } from '@/shared/measure/letter-shape';
import { prepareLine } from '@/shared/measure';
import { round2 } from '@/shared/measure/round';
import { bandsUpTo } from '@/shared/outline/grid';
import { predictKerning } from './predict-kerning';

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
  const bands = bandsUpTo(table.vertical.ascenderTop * scale);
  const shapes = table.glyphs.map((glyph) => letterShape(glyph, table.unitsPerEm, bands));
  const { faceReference, stem } = prepareLine(controlPack(table));
  const known = new Map<string, Pick<PairFigures, 'apparentGap' | 'area' | 'clearance' | 'suggestion'>>();
  return table.pairs.map(({ left, right, builtIn }) => {
    const a = shapes[left]!, b = shapes[right]!;
    const key = `${left} ${right}`;
    const measured = known.get(key) ?? measure(a, b, faceReference, stem?.stemGap ?? null);
    known.set(key, measured);
    const pair = table.glyphs[left]!.cluster + table.glyphs[right]!.cluster;
    return { pair, advance: round2(a.advance), kern: round2(builtIn * scale), ...measured };
  });
}

function measure(left: LetterShape, right: LetterShape, reference: number | null, stemGap: number | null) {
  const seen = seenGap(left.seen.right, right.seen.left);
  return {
    apparentGap: round2(apparentGap(seen, 0)),
    area: round2(meanWhite(areaGap(left, right), 0)),
    clearance: round2(clearance(left, right, left.advance).distance),
    suggestion: reference === null || stemGap === null ? null : round2(predictKerning(left, right, reference, stemGap)),
  };
}

/** A pack of the control letters alone, for the face's own reference. */
function controlPack(table: PairTable) {
  const { unitsPerEm, vertical, face, glyphs, control } = table;
  const first = control.H ?? 0;
  return { format: 'kerncrit-pack' as const, version: 1 as const, kind: 'font' as const, text: glyphs[first]?.cluster ?? 'H', unitsPerEm, vertical, face, glyphs, letters: [first], builtIn: [], wordSpace: [], control, ligatures: [] };
}

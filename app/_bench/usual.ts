import type { SpacingDocument } from '@/shared/editing/document';
import { inPixels } from '@/shared/exercise/sizes';
import { clearanceAt } from '@/shared/measure/at-total';
import { prepareLine } from '@/shared/measure/prepared-line';
import type { Pack } from '@/shared/schemas/pack';
import type { Size } from '@/shared/schemas/spacing';
import { judgeLine, type LineJudgement } from '@/shared/usual-range/judge-line';
import type { UsualRange } from '@/shared/usual-range/range';
import { spokenOutside } from '@/shared/usual-range/spoken';
import type { BesideUsual } from '@/shared/wording/usual-words';
import { opennessOf, totalOf } from './openness';
import type { BenchProps } from './props';

/**
 * What is usual for a line's pairs, with what is needed to judge a spacing. Plain data: the painter's thread uses it,
 * too.
 */
export type UsualLine = {
  /** Null where the usual range has nothing to say. */
  readonly ranges: readonly (UsualRange | null)[];
  readonly stemGap: number | null;
  readonly referenceGap: number | null;
};

const judged = new WeakMap<SpacingDocument, { usual: UsualLine; judgement: LineJudgement }>();

/** A spacing compared with what is usual, computed once for all views of it. */
function judgementOf(pack: Pack, document: SpacingDocument, usual: UsualLine, size: Size): LineJudgement {
  const found = judged.get(document);
  if (found?.usual === usual) return found.judgement;
  const line = prepareLine(pack);
  const totals = line.pairs.map((_, pair) => totalOf(line, document, pair));
  const judgement = judgeLine({
    ...usual,
    totals,
    tracking: document.tracking,
    gaps: opennessOf(line, document).gaps,
    clearances: totals.map((total, pair) => clearanceAt(line, pair, total).distance),
    sizePx: inPixels(size),
  });
  judged.set(document, { usual, judgement });
  return judgement;
}

/**
 * Whether the usual range is shown at all: where a reference may be seen, its tolerance alone decides. Only the person
 * who sets a reference sees how it differs from what is usual.
 */
export function speaksOfUsual({ mode, overlays }: Pick<BenchProps, 'mode' | 'overlays'>): boolean {
  return mode === 'reference' || !(overlays ?? []).some(({ tolerances }) => tolerances !== undefined);
}

/** Whether a pair may be called wider or tighter than usual; null where no judgement is possible. */
export function spokenOf(pack: Pack, document: SpacingDocument, usual: UsualLine, size: Size, pair: number) {
  const line = prepareLine(pack);
  const { tightness, pairs } = judgementOf(pack, document, usual, size);
  const ofPair = pairs[pair];
  if (!ofPair) return null;
  const { gaps, centres } = opennessOf(line, document);
  const clearance = clearanceAt(line, pair, totalOf(line, document, pair)).distance;
  return spokenOutside(
    { ...ofPair, apparentGap: gaps[pair]!, reference: centres[pair] ?? null, clearance },
    { stemGap: line.stem?.stemGap ?? null, faceReference: line.faceReference, tightness },
  );
}

/**
 * A pair as set, compared with its range; null where the range or, in a line set by contact, the judgement is missing.
 */
export function besideUsual(
  pack: Pack,
  document: SpacingDocument,
  usual: UsualLine,
  size: Size,
  pair: number,
): BesideUsual | null {
  const range = usual.ranges[pair];
  const { tightness, pairs } = judgementOf(pack, document, usual, size);
  if (!range || !pairs[pair]) return null;
  const total = totalOf(prepareLine(pack), document, pair) - tightness;
  return { range, total, tightness, sizePx: inPixels(size) };
}

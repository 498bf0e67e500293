'use client';
import type { GapMark, GapTie } from '@/shared/line/shapes';
import type { PairFault } from '@/shared/critique/faults';
import type { NoteView } from '@/shared/schemas/note';

/** Notes in the order of the margin: along the line, those on the whole line first. */
export const inMarginOrder = (notes: readonly NoteView[]): NoteView[] =>
  notes.toSorted(
    (one, other) => (one.fromPair ?? -1) - (other.fromPair ?? -1) || (one.toPair ?? -1) - (other.toPair ?? -1),
  );

/** A hairline from each pair or run that has notes, with their signs at its end. */
export function tiesOf(notes: readonly NoteView[]): GapTie[] {
  const ties = new Map<string, GapTie>();
  inMarginOrder(notes).forEach(({ fromPair, toPair }, index) => {
    if (fromPair === null || toPair === null) return;
    const key = `${fromPair}-${toPair}`;
    const known = ties.get(key);
    ties.set(key, { from: fromPair, to: toPair, sign: known ? `${known.sign}·${index + 1}` : String(index + 1) });
  });
  return [...ties.values()];
}

/** Wedges under the pairs that stand out; a letter out of place has one at each side of it. */
export function marksOf(faults: readonly PairFault[]): GapMark[] {
  return faults.flatMap(({ first, last, fault, share }): GapMark[] => {
    const strength = share > 3 ? 3 : share > 2 ? 2 : 1;
    if (fault === 'left')
      return [
        { gap: first, fault: 'tight', strength },
        { gap: last, fault: 'wide', strength },
      ];
    if (fault === 'right')
      return [
        { gap: first, fault: 'wide', strength },
        { gap: last, fault: 'tight', strength },
      ];
    return [{ gap: first, fault: fault === 'wide' ? 'wide' : 'tight', strength }];
  });
}

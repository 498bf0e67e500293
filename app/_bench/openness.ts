import type { SpacingDocument } from '@/shared/editing/document';
import { apparentGapAt, clearanceAt, offsetForGap } from '@/shared/measure/at-total';
import { pairReferences } from '@/shared/measure/pair-references';
import type { PreparedLine } from '@/shared/measure/prepared-line';
import type { Size } from '@/shared/schemas/spacing';
import type { Yardstick } from '@/shared/schemas/finding';
import { groundLeft } from '@/shared/scoring/findings/contact';
import { yardstick } from '@/shared/scoring/findings/measured';
import { leftWords } from '@/shared/wording/contact-words';
import { asShareOf } from '@/shared/wording/lengths';
import { withUnit } from '@/shared/text/number';
import type { PerMille } from '@/shared/units';

/** How open each gap looks now, and the middle of its own kind in this line. Lengths in 1/1000 em. */
export type Openness = {
  readonly gaps: readonly PerMille[];
  /** The middle each pair is compared with; null where the line has too few of its kind. */
  readonly centres: readonly (PerMille | null)[];
};

const known = new WeakMap<SpacingDocument, { readonly line: PreparedLine; readonly openness: Openness }>();

/** Computed once for all views of a spacing. */
export function opennessOf(line: PreparedLine, document: SpacingDocument): Openness {
  const found = known.get(document);
  if (found?.line === line) return found.openness;
  const totals = line.pairs.map((_, pair) => totalOf(line, document, pair));
  const gaps = totals.map((total, pair) => apparentGapAt(line, pair, total));
  const openness = { gaps, centres: pairReferences(line, totals) };
  known.set(document, { line, openness });
  return openness;
}

export function totalOf(line: PreparedLine, document: SpacingDocument, pair: number): PerMille {
  return (line.pairs[pair]?.builtIn ?? 0) + document.tracking + (document.offsets[pair] ?? 0);
}

/**
 * How much wider (above 0) or tighter a pair is than it would be if it looked as open as the middle; null where there
 * is none.
 */
export function excessOf(
  line: PreparedLine,
  document: SpacingDocument,
  openness: Openness,
  pair: number,
): PerMille | null {
  const centre = openness.centres[pair] ?? null;
  if (centre === null) return null;
  const even = offsetForGap(line, pair, centre, document.tracking);
  return even === null ? null : Math.round((document.offsets[pair] ?? 0) - even);
}

/** What differences in this line are compared with in words. */
export const besideOf = (line: PreparedLine): Yardstick =>
  yardstick(line.stem?.stemToStem ?? null, line.face.controlCounter);

/**
 * Below this step a difference can't be seen at display size; from `CLEAR` on it can't be missed. Our own steps, used
 * for words only.
 */
const SLIGHT = 12;
const CLEAR = 40;

/** `a little wider than the rest of the line, by about a seventh of the white between two stems` */
export function excessWords(excess: PerMille | null, beside: Yardstick): string {
  if (excess === null) return 'This line has too few gaps of this kind to hold it against.';
  if (Math.abs(excess) < SLIGHT) return 'About as open as the rest of the line.';
  const how = `${Math.abs(excess) < CLEAR ? 'A little ' : Math.abs(excess) < 2 * CLEAR ? 'Clearly ' : 'Much '}${excess > 0 ? 'wider' : 'tighter'} than the rest of the line`;
  const share = asShareOf(excess, beside);
  return share ? `${how}, by ${share}.` : `${how}.`;
}

/** Whether two letters touch, cross, or fill in at `size`, in words; null when they are clear of each other. */
export function contactWords(line: PreparedLine, document: SpacingDocument, pair: number, size: Size): string | null {
  const { distance, crossing } = clearanceAt(line, pair, totalOf(line, document, pair));
  if (crossing) return 'These two letters run into each other.';
  if (distance < 1) return 'These two letters touch.';
  const left = groundLeft(distance, size);
  if (left !== null)
    return `At ${withUnit(size.value, size.unit, 1)} only ${leftWords(left, size)} between these two letters, and it may fill in.`;
  const stem = line.stem?.stemGap ?? null;
  return stem !== null && distance < 0.12 * stem ? 'These two letters nearly touch.' : null;
}

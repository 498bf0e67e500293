import type { PerMille } from '@/shared/units';
import type { Spacing } from '@/shared/schemas/spacing';

/**
 * What is worked on at the bench: one spacing and, where a reference is set, a tolerance and a reason per pair. Values
 * are never changed in place.
 */
export type SpacingDocument = {
  readonly tracking: PerMille;
  /** One offset per pair, whole, within ±OFFSET_LIMIT. */
  readonly offsets: readonly PerMille[];
  /** Only in a reference. null = the exercise's own tolerance. */
  readonly tolerances?: readonly (PerMille | null)[];
  /** Only in a reference. '' = no reason given. */
  readonly reasons?: readonly string[];
};

/** Offsets and tracking stay within ± this many thousandths of an em. */
export const OFFSET_LIMIT = 2000;

/** The line as the face gives it: nothing added anywhere. */
export function builtInDocument(pairCount: number): SpacingDocument {
  return { tracking: 0, offsets: new Array<PerMille>(pairCount).fill(0) };
}

/** The same settings, whatever object holds them. */
export function sameDocument(a: SpacingDocument, b: SpacingDocument): boolean {
  return (
    a.tracking === b.tracking &&
    sameList(a.offsets, b.offsets) &&
    sameList(a.tolerances ?? [], b.tolerances ?? []) &&
    sameList(a.reasons ?? [], b.reasons ?? [])
  );
}

/** The part of a document that is a spacing. */
export function spacingOf(document: SpacingDocument): Spacing {
  return { tracking: document.tracking, offsets: [...document.offsets] };
}

/** Throws when a document does not fit a line of `pairCount` pairs; the message quotes what was wrong. */
export function assertFits(document: SpacingDocument, pairCount: number): void {
  for (const [name, list] of [
    ['offsets', document.offsets],
    ['tolerances', document.tolerances],
    ['reasons', document.reasons],
  ] as const) {
    if (list && list.length !== pairCount) {
      throw new RangeError(`This line has ${pairCount} pairs, but ${list.length} ${name} were given.`);
    }
  }
  for (const value of [document.tracking, ...document.offsets]) {
    if (!Number.isInteger(value) || Math.abs(value) > OFFSET_LIMIT) {
      throw new RangeError(`${value} is not a whole number of thousandths within ±${OFFSET_LIMIT}.`);
    }
  }
}

function sameList<T>(a: readonly T[], b: readonly T[]): boolean {
  return a.length === b.length && a.every((value, index) => value === b[index]);
}

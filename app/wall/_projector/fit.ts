'use client';
import { setWidthOf } from '@/app/_line/frame';
import { placeLetters } from '@/shared/outline/place-letters';
import type { Pack } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';

type Set = { pack: Pack; spacing: Spacing };

/** Beside each line: its sign, and a little air. CSS px. */
export const BESIDE = 64;
const most = 4;

/** So large an em at least, as a share of the screen's height, for the back of a room. From looking at it, not from a source. */
const legible = 0.08;

/** Width that every line gets, in em: what the face gives and room for being opened, so that one more line changes no size. */
export function widest(lines: readonly Set[]): number {
  return (
    Math.max(
      1,
      ...lines.map(({ pack, spacing }) =>
        Math.max(1.12 * setWidthOf(pack), placeLetters(pack, spacing).width / pack.unitsPerEm),
      ),
    ) + 0.16
  );
}

/** Em when so many columns stand side by side. */
export const emFor = (columns: number, width: number, ems: number, height: number): number =>
  Math.max(14, Math.min((width / columns - BESIDE) / ems, 0.5 * height));

/** As many columns as can still be read from the back. */
export function columnsFor(width: number, height: number, ems: number): number {
  let columns = 1;
  while (columns < most && emFor(columns + 1, width, ems, height) >= legible * height) columns += 1;
  return columns;
}

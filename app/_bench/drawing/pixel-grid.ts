import type { CssPx } from '@/shared/units';

/** The nearest edge between two pixels of the screen: what lies on it has no grey seam. `dpr` is device px per CSS px. */
export function onGrid(place: CssPx, dpr: number): CssPx {
  return Math.round(place * dpr) / dpr;
}

/** A thickness in whole pixels of the screen, one at least. */
export function thickness(wanted: CssPx, dpr: number): CssPx {
  return Math.max(1, Math.round(wanted * dpr)) / dpr;
}

/** Where a bar of a thickness in whole pixels begins, so that its middle is as near to `middle` as the pixels allow. */
export function barFrom(middle: CssPx, thick: CssPx, dpr: number): CssPx {
  return onGrid(middle - thick / 2, dpr);
}

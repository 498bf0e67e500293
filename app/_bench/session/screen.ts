import { openDevice } from './device';

/** CSS px per millimetre on this screen, measured with a card, and the pixel density at that time. */
export type ScreenMeasure = { readonly pxPerMm: number; readonly density: number };

/** CSS px per millimetre on an unmeasured screen: 96 px = 25.4 mm (CSS Values and Units 4, 6.2). */
export const NOMINAL_PX_PER_MM = 96 / 25.4;
/** Width and height of a card in mm: ISO/IEC 7810, format ID-1. */
export const CARD = { width: 85.6, height: 53.98 };

const PLACE = 'kerncrit/screen';

export function readScreen(): ScreenMeasure | null {
  try {
    const stored = JSON.parse(openDevice().store.get(PLACE) ?? 'null') as Partial<ScreenMeasure> | null;
    const sane =
      stored &&
      typeof stored.pxPerMm === 'number' &&
      stored.pxPerMm > 0.5 &&
      stored.pxPerMm < 40 &&
      typeof stored.density === 'number' &&
      stored.density > 0;
    return sane ? (stored as ScreenMeasure) : null;
  } catch {
    return null;
  }
}

export function keepScreen(measure: ScreenMeasure | null): void {
  try {
    const { store } = openDevice();
    if (measure) store.set(PLACE, JSON.stringify(measure));
    else store.remove(PLACE);
  } catch {
    // A full device: then the measurement lasts only as long as the page.
  }
}

/**
 * CSS px per millimetre now. Zooming changes the density and the size of a CSS px together, so an earlier measurement
 * stays valid.
 */
export function pxPerMmNow(measure: ScreenMeasure | null, density: number): number {
  return measure ? (measure.pxPerMm * measure.density) / density : NOMINAL_PX_PER_MM;
}

/**
 * Units are types, so that a number in font units never meets one in 1/1000 em by accident.
 * A brand costs nothing at run time.
 */
declare const unit: unique symbol;
type Unit<Name extends string> = number & { readonly [unit]?: Name };

/** Whole units of a font's own grid (unitsPerEm of them make one em). y runs up. */
export type FontUnits = Unit<'FontUnits'>;
/** Thousandths of an em. Every number that a person sees is in these. */
export type PerMille = Unit<'PerMille'>;
/** CSS pixels. */
export type CssPx = Unit<'CssPx'>;

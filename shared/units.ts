/**
 * Units by name, for the reader of a signature. They do not keep numbers apart: a plain number passes for any of them.
 * In
 * `shared/measure` every length is in 1/1000 em from the moment a letter is made ready.
 */
declare const unit: unique symbol;
type Unit<Name extends string> = number & { readonly [unit]?: Name };

/** Whole units of a font's own grid (unitsPerEm of them make one em). y runs up. */
export type FontUnits = Unit<'FontUnits'>;
/** Thousandths of an em. Every number that a person sees is in these. */
export type PerMille = Unit<'PerMille'>;
/** CSS pixels. */
export type CssPx = Unit<'CssPx'>;

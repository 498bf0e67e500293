import type { Pack } from '@/shared/schemas/pack';
import type { FontUnits, PerMille } from '@/shared/units';
import type { SpacingDocument } from './document';

/** Where each letter of a line stands. */
export type SetLine = {
  /** Origin of each letter from the start of the line. */
  readonly origins: readonly FontUnits[];
  /** From the first origin to the end of the last advance. */
  readonly width: FontUnits;
};

/** Sets a line: each pair adds its word space, its built-in value, the tracking and its offset to the advance before it. */
export function setLine(pack: Pack, spacing: Pick<SpacingDocument, 'tracking' | 'offsets'>): SetLine {
  const unitsPerThousandth = pack.unitsPerEm / 1000;
  const origins: FontUnits[] = [];
  let x = 0;
  pack.letters.forEach((glyph, letter) => {
    origins.push(x);
    x += pack.glyphs[glyph]?.advance ?? 0;
    if (letter < pack.builtIn.length) {
      x += (pack.wordSpace[letter] ?? 0) + (pack.builtIn[letter] ?? 0);
      x += (spacing.tracking + (spacing.offsets[letter] ?? 0)) * unitsPerThousandth;
    }
  });
  return { origins, width: x };
}

/** Built-in value of a pair, in whole thousandths as screens give it. */
export function builtInOf(pack: Pack, pair: number): PerMille {
  return Math.floor(((pack.builtIn[pair] ?? 0) * 1000) / pack.unitsPerEm + 0.5) + 0;
}

import type { Pack } from '@/shared/schemas/pack';
import type { Size, Spacing } from '@/shared/schemas/spacing';

/** A spacing that is exported, with the line it belongs to. */
export type ExportedSpacing = { pack: Pack; spacing: Spacing; size: Size; ground: 'light' | 'dark'; licence: string };

/** A pair by its parts, all in 1/1000 em; `total` is what must be added to the advance of the left letter. */
export type ExportedPair = {
  left: string;
  right: string;
  builtIn: number;
  tracking: number;
  offset: number;
  total: number;
  wordSpace: boolean;
};

/** Pairs of a line with built-in, tracking, offset and their sum. */
export function exportedPairs({ pack, spacing }: Pick<ExportedSpacing, 'pack' | 'spacing'>): ExportedPair[] {
  const letters = pack.letters.map((glyph) => pack.glyphs[glyph]!.cluster);
  return spacing.offsets.map((offset, index) => {
    const builtIn = Math.round((pack.builtIn[index]! / pack.unitsPerEm) * 1_000_000) / 1000;
    return {
      left: letters[index]!,
      right: letters[index + 1]!,
      builtIn,
      tracking: spacing.tracking,
      offset,
      total: Math.round((builtIn + spacing.tracking + offset) * 1000) / 1000,
      wordSpace: pack.wordSpace[index]! > 0,
    };
  });
}

/** The spacing as JSON in a format of our own, for other programs to read: every number says its unit. */
export function spacingJson(exported: ExportedSpacing): string {
  const { pack, size, ground, licence } = exported;
  return `${JSON.stringify(
    {
      format: 'kerncrit-spacing',
      version: 1,
      unit: '1/1000 em',
      text: pack.text,
      size,
      ground,
      face: pack.face && {
        family: pack.face.family,
        style: pack.face.style,
        weight: pack.face.weight,
        italic: pack.face.italic,
        axes: pack.face.axes,
        licence,
      },
      tracking: exported.spacing.tracking,
      pairs: exportedPairs(exported),
    },
    null,
    2,
  )}\n`;
}

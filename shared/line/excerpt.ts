import type { Pack } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';

type Line = { pack: Pack; spacing: Spacing };

/** The letters of one gap and their spacing, as a line of two. `gap` counts from 0; RangeError where there is none. */
export function pairOfLine({ pack, spacing }: Line, gap: number): Line {
  if (pack.letters[gap + 1] === undefined) throw new RangeError(`no gap ${gap} in a line of ${pack.letters.length}`);
  const [letters, wordSpace] = [pack.letters.slice(gap, gap + 2), pack.wordSpace.slice(gap, gap + 1)];
  const clusters = letters.map((glyph) => pack.glyphs[glyph]!.cluster);
  return {
    pack: {
      ...pack,
      text: clusters.join(wordSpace[0]! > 0 ? ' ' : ''),
      letters,
      wordSpace,
      builtIn: pack.builtIn.slice(gap, gap + 1),
      usual: pack.usual?.slice(gap, gap + 1),
      ligatures: [],
    },
    spacing: { ...spacing, offsets: [spacing.offsets[gap] ?? 0] },
  };
}

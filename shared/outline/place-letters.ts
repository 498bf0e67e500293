import type { Pack } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';

/**
 * A letter of the line: its origin `x` along the line and `dy` over the baseline, its advance, all in font units, and
 * how far it is turned, in tenths of a degree against the clock. Letters of type are upright on the baseline: both are
 * 0.
 */
export type PlacedLetter = { index: number; glyph: number; x: number; dy: number; turn: number; advance: number };

/**
 * A gap on the line: from the end of the left letter's advance to the origin of the right letter, in font units (`to` <
 * `from` where a pair is tightened).
 */
type PlacedGap = { index: number; from: number; to: number; centre: number };

export type PlacedLine = { letters: PlacedLetter[]; gaps: PlacedGap[]; width: number };

/**
 * Sets a line: each letter follows the one before by advance + built-in + word space + tracking + offset.
 * A pair's offset moves everything to its right. All in font units, fractions kept.
 * @throws RangeError when the spacing has another number of gaps than the line.
 */
export function placeLetters(pack: Pack, spacing: Spacing): PlacedLine {
  const gapCount = pack.letters.length - 1;
  if (spacing.offsets.length !== gapCount) {
    throw new RangeError(
      `The line “${pack.text}” has ${gapCount} gaps, the spacing has ${spacing.offsets.length} offsets.`,
    );
  }
  const unitsPerPerMille = pack.unitsPerEm / 1000;
  const letters: PlacedLetter[] = [];
  const gaps: PlacedGap[] = [];
  let x = 0;
  for (let index = 0; index <= gapCount; index++) {
    const glyph = pack.letters[index]!;
    const advance = pack.glyphs[glyph]!.advance;
    letters.push({ index, glyph, x, dy: 0, turn: 0, advance });
    if (index === gapCount) return { letters, gaps, width: x + advance };
    const from = x + advance;
    const to =
      from +
      pack.builtIn[index]! +
      pack.wordSpace[index]! +
      (spacing.tracking + spacing.offsets[index]!) * unitsPerPerMille;
    gaps.push({ index, from, to, centre: (from + to) / 2 });
    x = to;
  }
  throw new RangeError(`The line “${pack.text}” has no letters.`);
}

/** A pack path moved right by `dx` and up by `dy`, two decimals. Coordinates alternate x, y after every command. */
export function shiftedPath(path: string, dx: number, dy = 0): string {
  const moved = (number: string, by: number) => Math.floor((Number(number) + by) * 100 + 0.5) / 100;
  return path.replace(/([MLQC])([^MLQCZ]*)/g, (_, command: string, numbers: string) => {
    const shifted = numbers
      .split(' ')
      .map((number, i) => (i % 2 === 0 ? moved(number, dx) : dy === 0 ? number : moved(number, dy)));
    return command + shifted.join(' ');
  });
}

/** A spacing that changes nothing. */
export function untouchedSpacing(pack: Pack): Spacing {
  return { tracking: 0, offsets: pack.builtIn.map(() => 0) };
}

import type { Size } from '@/shared/schemas/spacing';

/** A size in CSS pixels: 1 px = 1/96 in and 1 pt = 1/72 in (CSS Values and Units 4, §6.2). */
export const inPixels = ({ value, unit }: Size): number => (unit === 'pt' ? (value * 96) / 72 : value);

/** CSS pixels as they measure on paper: 1 px = 1/96 in = 25.4/96 mm. */
export const inMillimetres = (pixels: number): number => (pixels * 25.4) / 96;

/** The size a line is crowded at first: the smallest the exercise names, where that is under the line's own. */
export const smallestInUse = (size: Size, smallest: Size | null | undefined): Size =>
  smallest && inPixels(smallest) < inPixels(size) ? smallest : size;

/** Quotes the part that is no size. */
export class SizeTextError extends Error {}

/**
 * Sizes as people type them: “72 px, 24pt; 10,5 pt”. A comma between two figures is a decimal one; other commas,
 * semicolons and new lines separate.
 * @throws SizeTextError for an empty text, a number without a unit, an unknown unit, or a size out of reach.
 */
export function parseSizes(text: string): Size[] {
  const parts = text
    .replace(/(\d),(?=\d)/g, '$1.')
    .split(/[;,\n]/)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  if (parts.length === 0) throw new SizeTextError('Give at least one size with its unit, such as 72 px or 24 pt.');
  return parts.map(parseSize);
}

function parseSize(part: string): Size {
  const match = /^(\d+(?:\.\d+)?)\s*(\p{L}*)$/u.exec(part);
  const unit = match?.[2]?.toLowerCase();
  if (!match || (unit !== 'px' && unit !== 'pt'))
    throw new SizeTextError(
      `“${part}” is not a size. Write a number and px (for screens) or pt (for paper), such as 72 px.`,
    );
  const value = Number(match[1]);
  if (value < 6 || value > 2000) throw new SizeTextError(`“${part}” is out of reach: sizes go from 6 to 2000.`);
  return { value, unit };
}

/** The way back: `72 px, 10.5 pt`. */
export const sizesText = (sizes: readonly Size[]): string =>
  sizes.map(({ value, unit }) => `${value} ${unit}`).join(', ');

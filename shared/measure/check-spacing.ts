import type { Pack } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';
import { MeasureError } from './errors';

/** @throws MeasureError when a spacing does not fit a line, quoting the value. */
export function checkSpacing(pack: Pack, spacing: Spacing): void {
  const pairs = pack.letters.length - 1;
  if (spacing.offsets.length !== pairs) {
    throw new MeasureError(
      'wrong-length',
      `“${pack.text}” has ${pairs} gaps, but ${spacing.offsets.length} offsets were given. Give one offset a gap, 0 where nothing is changed.`,
      String(spacing.offsets.length),
    );
  }
  checkOffset(spacing.tracking, 'tracking');
  spacing.offsets.forEach((offset, index) => checkOffset(offset, `offset ${index + 1}`));
}

function checkOffset(value: number, name: string): void {
  if (typeof value !== 'number' || !Number.isInteger(value) || Math.abs(value) > 2000) {
    throw new MeasureError(
      'bad-offset',
      `The ${name} is “${value}”. It must be a whole number of thousandths of an em from −2000 to 2000.`,
      String(value),
    );
  }
}

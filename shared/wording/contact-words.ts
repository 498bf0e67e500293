import { inMillimetres } from '@/shared/exercise/sizes';
import type { Size } from '@/shared/schemas/spacing';
import { withUnit } from '@/shared/text/number';

/**
 * What is left between two letters, in the medium of the size: `0.6 px of ground is left`, `0.04 mm of paper is left`.
 */
export function leftWords(pixels: number, { unit }: Size): string {
  return unit === 'pt'
    ? `${withUnit(inMillimetres(pixels), 'mm', 2)} of paper is left`
    : `${withUnit(pixels, 'px', 1)} of ground is left`;
}

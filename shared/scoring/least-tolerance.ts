import { inMillimetres, inPixels } from '@/shared/exercise/sizes';
import type { Size } from '@/shared/schemas/spacing';

/**
 * The finest tolerance that makes sense at a size, 1/1000 em: 10, or what can't be seen there, half a pixel on a screen
 * and 0.05 mm on paper. Our own figures.
 */
export function leastTolerance(size: Size): number {
  const pixels = inPixels(size);
  const unseen = size.unit === 'pt' ? 50 / inMillimetres(pixels) : 500 / pixels;
  return Math.max(10, Math.floor(unseen + 0.5));
}

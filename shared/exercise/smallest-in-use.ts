import type { Size } from '@/shared/schemas/spacing';
import { inPixels } from './in-pixels';

/** The size a line is crowded at first: the smallest the exercise names, where that is under the line's own. */
export const smallestInUse = (size: Size, smallest: Size | null | undefined): Size =>
  smallest && inPixels(smallest) < inPixels(size) ? smallest : size;

import type { Size } from '@/shared/schemas/spacing';

/** A size in CSS pixels: 1 px = 1/96 in and 1 pt = 1/72 in (CSS Values and Units 4, §6.2). */
export const inPixels = ({ value, unit }: Size): number => (unit === 'pt' ? (value * 96) / 72 : value);

import type { Texture } from '@/shared/line/shapes';
import type { CssPx } from '@/shared/units';

/**
 * One tile of a texture, `size` wide and high: a path that is filled, or drawn in lines of a thickness. Device pixels.
 */
export type Tile = { readonly size: number; readonly path: string; readonly line: number | null };

/**
 * Textures of the kinds of white. They differ in form first: diagonal lines between letters, dots inside them, rings
 * where a letter is open to one side. Canvas and SVG draw the same tiles.
 */
export const tiles: Record<Texture, (pitch: number) => Tile> = {
  hatch(pitch) {
    const size = Math.max(3, Math.round(pitch));
    // The line and its two neighbours, so that the corners of adjoining tiles meet.
    const path = [-size, 0, size].map((shift) => `M${shift - 1} ${size + 1}L${shift + size + 1} -1`).join('');
    return { size, path, line: Math.max(1, 0.17 * size) };
  },
  dots(pitch) {
    // With an even tile both dots have the same position relative to the pixels: at a corner between four, or in the
    // middle of one.
    const size = Math.max(4, 2 * Math.round(pitch / 2));
    return { size, path: discs(size, Math.max(0.8, 0.155 * size)), line: null };
  },
  rings(pitch) {
    // 10, 14, 18 … pixels, so that each ring has a pixel in its middle, which stays white in the smallest.
    const size = Math.max(10, 4 * Math.round((1.5 * pitch - 2) / 4) + 2);
    return { size, path: discs(size, Math.max(1.35, 0.155 * size)), line: Math.max(1, 0.085 * size) };
  },
};

/** Pitch of a texture on a line of this em: finer on small lines. */
export const pitchFor = (em: CssPx): CssPx => (em >= 110 ? 7 : em >= 48 ? 5 : 3);

/** Em below which a hatch is too coarse to show the white of hidden letters: it is solid there. */
export const SOLID_UNDER: CssPx = 60;

/** Two discs of a tile, placed on the diagonals of a grid. */
function discs(size: number, radius: number): string {
  return [size / 4, (3 * size) / 4]
    .map(
      (at) =>
        `M${at - radius} ${at}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0Z`,
    )
    .join('');
}

import type { Context } from '../_bench/drawing/paint-order';

/**
 * Textures of the two kinds of white. They differ in form first: diagonal lines between letters, dots inside them,
 * rings where a letter is open to one side.
 * Tiles are drawn in device pixels and laid on the canvas untransformed, so that they keep their grain at any size of letter.
 */
const tiles = new Map<string, CanvasPattern>();

export function hatch(context: Context, colour: string, dpr: number, pitch: number): CanvasPattern | string {
  return tile(context, `hatch ${colour} ${dpr} ${pitch}`, Math.max(3, Math.round(pitch * dpr)), (on, size) => {
    on.strokeStyle = colour;
    on.lineWidth = Math.max(1, 0.17 * size);
    on.beginPath();
    // The line and its two neighbours, so that the corners of the tile meet.
    for (const shift of [-size, 0, size]) {
      on.moveTo(shift - 1, size + 1);
      on.lineTo(shift + size + 1, -1);
    }
    on.stroke();
  });
}

export function dots(context: Context, colour: string, dpr: number, pitch: number): CanvasPattern | string {
  // An even tile has both dots alike on the pixels: on a corner between four, or in the middle of one.
  return tile(context, `dots ${colour} ${dpr} ${pitch}`, Math.max(4, 2 * Math.round((pitch * dpr) / 2)), (on, size) => {
    on.fillStyle = colour;
    for (const at of [size / 4, (3 * size) / 4]) {
      on.beginPath();
      on.arc(at, at, Math.max(0.8, 0.155 * size), 0, 2 * Math.PI);
      on.fill();
    }
  });
}

/** Open dots on the same grid, for white that is inside a letter and in the gap at once. */
export function rings(context: Context, colour: string, dpr: number, pitch: number): CanvasPattern | string {
  // 10, 14, 18 … pixels: so each ring has a pixel in its middle, which stays white in the smallest.
  return tile(
    context,
    `rings ${colour} ${dpr} ${pitch}`,
    Math.max(10, 4 * Math.round((1.5 * pitch * dpr - 2) / 4) + 2),
    (on, size) => {
      on.strokeStyle = colour;
      on.lineWidth = Math.max(1, 0.085 * size);
      for (const at of [size / 4, (3 * size) / 4]) {
        on.beginPath();
        on.arc(at, at, Math.max(1.35, 0.155 * size), 0, 2 * Math.PI);
        on.stroke();
      }
    },
  );
}

function tile(
  context: Context,
  key: string,
  size: number,
  draw: (on: Context, size: number) => void,
): CanvasPattern | string {
  const kept = tiles.get(key);
  if (kept) return kept;
  const canvas =
    typeof document === 'undefined'
      ? new OffscreenCanvas(size, size)
      : Object.assign(document.createElement('canvas'), { width: size, height: size });
  const on = canvas.getContext('2d') as Context | null;
  if (!on) return 'transparent';
  draw(on, size);
  const pattern = context.createPattern(canvas, 'repeat');
  if (!pattern) return 'transparent';
  tiles.set(key, pattern);
  return pattern;
}

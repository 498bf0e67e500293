'use client';
import { type CellSize, cellSizes, type MapInks } from './map-frame';

/** Drawn once for a size and a set of colours, then copied: shades −3 to 3 at index 0 to 6, an empty cell at 7. */
export type Stamps = { put: (context: CanvasRenderingContext2D, shade: number, x: number, y: number) => void };

export function makeStamps(cell: CellSize, inks: MapInks, dpr: number): Stamps {
  const { width, height } = cellSizes[cell];
  // All shades on one canvas: switching between source canvases would cost more than the copying.
  const [wide, high] = [Math.ceil(width * dpr), Math.ceil(height * dpr)];
  const sheet = document.createElement('canvas');
  sheet.width = 8 * wide;
  sheet.height = high;
  const context = sheet.getContext('2d', { alpha: false })!;
  for (let index = 0; index < 8; index += 1) {
    context.setTransform(wide / width, 0, 0, high / height, index * wide, 0);
    context.fillStyle = inks.ground;
    context.fillRect(0, 0, width, height);
    if (index === 7) nothing(context, width, height, inks);
    else if (cell === 'whole') small(context, width, height, index - 3, inks);
    else sign(context, width, height, index - 3, inks, cell === 'numbers');
  }
  return {
    put: (onto, shade, x, y) =>
      onto.drawImage(sheet, (shade < -3 || shade > 3 ? 7 : shade + 3) * wide, 0, wide, high, x, y, width, height),
  };
}

/** The further off, the more of the cell is coloured; both colour and form show the direction. */
const strength = [0, 0.22, 0.45, 0.75];

function ground(context: CanvasRenderingContext2D, width: number, height: number, shade: number, inks: MapInks) {
  context.globalAlpha = strength[Math.abs(shade)]!;
  context.fillStyle = shade > 0 ? inks.wide : inks.tight;
  context.fillRect(0, 0, width - 1, height - 1);
  context.globalAlpha = 1;
}

/**
 * Wedges that point outwards where the gap is too wide, towards each other where it is too tight; a dot within
 * tolerance.
 */
function sign(
  context: CanvasRenderingContext2D,
  width: number,
  height: number,
  shade: number,
  inks: MapInks,
  beside: boolean,
) {
  if (shade !== 0) ground(context, width, height, shade, inks);
  const middle = beside ? 9 : (width - 1) / 2,
    y = (height - 1) / 2;
  context.fillStyle = shade === 0 ? inks.edge : inks.ink;
  context.beginPath();
  if (shade === 0) context.arc(middle, y, 1.4, 0, 2 * Math.PI);
  else {
    const size = 2.5 + Math.abs(shade);
    const [point, back] = shade < 0 ? [1, 1 + size] : [1 + size, 1];
    for (const side of [-1, 1]) {
      context.moveTo(middle + side * point, y);
      context.lineTo(middle + side * back, y - size * 0.8);
      context.lineTo(middle + side * back, y + size * 0.8);
      context.closePath();
    }
  }
  context.fill();
}

/** Too small for wedges: both edges of the cell for too wide, its middle for too tight. */
function small(context: CanvasRenderingContext2D, width: number, height: number, shade: number, inks: MapInks) {
  if (shade === 0) return;
  context.globalAlpha = [0, 0.45, 0.7, 1][Math.abs(shade)]!;
  context.fillStyle = shade > 0 ? inks.wide : inks.tight;
  const third = (width - 1) / 3;
  if (shade < 0) context.fillRect(third, 0, third, height - 1);
  else {
    context.fillRect(0, 0, third, height - 1);
    context.fillRect(2 * third, 0, third, height - 1);
  }
  context.globalAlpha = 1;
}

function nothing(context: CanvasRenderingContext2D, width: number, height: number, inks: MapInks) {
  context.strokeStyle = inks.rule;
  context.beginPath();
  context.moveTo(width * 0.3, height * 0.7);
  context.lineTo(width * 0.7, height * 0.3);
  context.stroke();
}

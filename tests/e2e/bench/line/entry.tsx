import { flushSync } from 'react-dom';
import { createRoot, type Root } from 'react-dom/client';
import '@/app/globals.css';
import { filterFor, freshContext } from '@/app/_line/brush';
import type { Frame } from '@/app/_line/frame';
import { inksOf, opposite } from '@/app/_line/inks';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { paintShapes } from '@/app/_line/painters';
import { flipsOf, noLooks, type Looks } from '@/shared/line/looks';
import { lineShapes, type GapMark, type GapTie } from '@/shared/line/shapes';
import type { Pack } from '@/shared/schemas/pack';
import type { Ground, Spacing } from '@/shared/schemas/spacing';

export type Shown = {
  pack: Pack;
  spacing: Spacing;
  ground: Ground;
  /** CSS px. */
  em: number;
  looks: Partial<Looks>;
  chosen: number | null;
  under?: Spacing;
  marks?: GapMark[];
  ties?: GapTie[];
};

declare global {
  interface Window {
    show(shown: Shown): void;
    different(one: string, other: string): Promise<{ share: number; ink: number }>;
  }
}

let root: Root | null = null;

/** The same line by the SVG painter and by the canvas painter, each on a sheet of its own. */
window.show = (shown) => {
  const looks = { ...noLooks, ...shown.looks };
  const ground = looks.opposite ? opposite(shown.ground) : shown.ground;
  const { pack, spacing, em, chosen, under, marks, ties } = shown;
  const main = document.getElementById('main')!;
  root ??= createRoot(main);
  const sheet = { className: `sheet sheet-bare sheet-${ground}`, style: { position: 'absolute', left: 20 } as const };
  flushSync(() =>
    root!.render(
      <>
        <div id="svg" {...sheet} style={{ ...sheet.style, top: 20 }}>
          <LineDrawing {...{ pack, spacing, looks, chosen, under, marks, ties }} size={{ value: em, unit: 'px' }} />
        </div>
        <div id="canvas" {...sheet} style={{ ...sheet.style, top: 420 }}>
          <canvas style={{ display: 'block' }} />
        </div>
      </>,
    ),
  );
  const box = main.querySelector('svg')!.viewBox.baseVal;
  const scale = em / pack.unitsPerEm;
  const frame: Frame = {
    width: box.width * scale,
    height: box.height * scale,
    scale,
    originX: -box.x * scale,
    baselineY: -box.y * scale,
    ...flipsOf(looks),
    axisX: (box.width * scale) / 2,
  };
  const canvas = main.querySelector('canvas')!;
  const shapes = lineShapes({
    ...{ pack, spacing, looks, chosen, marks, ties, foot: -(box.y + box.height) },
    overlays: under ? [{ spacing: under }] : [],
  });
  const layers = looks.blur ? shapes.filter((shape) => !shape.sharp) : shapes;
  paintShapes({ context: freshContext(canvas, frame, 1)!, dpr: 1, frame, inks: inksOf(ground), em }, layers);
  canvas.style.filter = filterFor(looks, em);
};

/**
 * How far two pictures differ: the share of pixels whose colour is outside what the other has within one pixel of it,
 * by more than `TOLERANCE` of 255. Edges that are smoothed in another way, or are half a pixel off, are no difference.
 */
window.different = async (one, other) => {
  const [a, b] = await Promise.all([pixels(one), pixels(other)]);
  const [width, height] = [Math.min(a.width, b.width), Math.min(a.height, b.height)];
  let apart = 0;
  let ink = 0;
  for (let y = 1; y < height - 1; y += 1)
    for (let x = 1; x < width - 1; x += 1) {
      if (!near(a, b, x, y) || !near(b, a, x, y)) apart += 1;
      if (Math.abs(at(a, x, y, 1) - at(a, 1, 1, 1)) > TOLERANCE) ink += 1;
    }
  return { share: apart / (width * height), ink: ink / (width * height) };
};

const TOLERANCE = 48;
type Picture = { width: number; height: number; data: Uint8ClampedArray };

const at = ({ width, data }: Picture, x: number, y: number, channel: number) => data[4 * (y * width + x) + channel]!;

function near(a: Picture, b: Picture, x: number, y: number): boolean {
  for (let channel = 0; channel < 3; channel += 1) {
    let [least, most] = [255, 0];
    for (let dy = -1; dy <= 1; dy += 1)
      for (let dx = -1; dx <= 1; dx += 1) {
        const value = at(b, x + dx, y + dy, channel);
        least = Math.min(least, value);
        most = Math.max(most, value);
      }
    const value = at(a, x, y, channel);
    if (value < least - TOLERANCE || value > most + TOLERANCE) return false;
  }
  return true;
}

async function pixels(png: string): Promise<Picture> {
  const image = new Image();
  image.src = `data:image/png;base64,${png}`;
  await image.decode();
  const canvas = Object.assign(document.createElement('canvas'), { width: image.width, height: image.height });
  const context = canvas.getContext('2d')!;
  context.drawImage(image, 0, 0);
  return context.getImageData(0, 0, image.width, image.height);
}

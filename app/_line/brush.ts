import type { Looks } from '@/shared/line/looks';
import type { PathShape, Place } from '@/shared/line/shapes';
import type { Outline } from '@/shared/line/white';
import type { CssPx } from '@/shared/units';
import { type Frame, xOf, yOf } from './frame';
import type { Inks } from './inks';
import { pitchFor, tiles } from './textures';

export type Surface = OffscreenCanvas | HTMLCanvasElement;
export type Context = OffscreenCanvasRenderingContext2D | CanvasRenderingContext2D;

/** What painting needs: a canvas, the position of the line on it, and the colours of its ground. */
export type Brush = {
  readonly context: Context;
  readonly dpr: number;
  readonly frame: Frame;
  readonly inks: Inks;
  readonly em: CssPx;
};

/** Gives a canvas the size of its frame and clears it; null where the browser gives no context. */
export function freshContext(surface: Surface, frame: Frame, dpr: number): Context | null {
  const context = surface.getContext('2d') as Context | null;
  if (!context) return null;
  const [across, down] = [Math.round(frame.width * dpr), Math.round(frame.height * dpr)];
  if (surface.width !== across) surface.width = across;
  if (surface.height !== down) surface.height = down;
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.clearRect(0, 0, across, down);
  return context;
}

/** How far a blurred line is blurred, as a share of its em. */
export const BLUR = 0.028;

/** The canvas filter for these ways of looking. */
export const filterFor = (looks: Looks, em: CssPx): string => (looks.blur ? `blur(${(BLUR * em).toFixed(2)}px)` : '');

type Matrix = [number, number, number, number, number, number];

/** From units of an outline at its position to device pixels. */
export function matrixOf({ frame, dpr }: Brush, { dx, dy, turn }: Place, unit: number, upright = false): Matrix {
  const across = (frame.flipX && !upright ? -1 : 1) * frame.scale * unit * dpr;
  const up = (frame.flipY && !upright ? 1 : -1) * frame.scale * unit * dpr;
  const x = xOf(frame, dx) * dpr;
  const y = (upright ? frame.baselineY - dy * frame.scale : yOf(frame, dy)) * dpr;
  if (turn === 0) return [across, 0, 0, up, x, y];
  const angle = (turn * Math.PI) / 1800;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [across * cos, up * sin, -across * sin, up * cos, x, y];
}

const paths = new WeakMap<Outline, Path2D>();

/** An outline in its own units. */
export function outlinePath(outline: Outline): Path2D {
  const known = paths.get(outline);
  if (known) return known;
  const path = 'path' in outline ? new Path2D(outline.path) : new Path2D();
  if ('lines' in outline) for (const line of outline.lines) trace(path, line, outline.closed);
  paths.set(outline, path);
  return path;
}

function trace(path: Path2D, points: readonly number[], closed: boolean): void {
  for (let i = 0; i + 1 < points.length; i += 2) {
    if (i === 0) path.moveTo(points[0]!, points[1]!);
    else path.lineTo(points[i]!, points[i + 1]!);
  }
  if (closed) path.closePath();
}

/** All pieces of a shape as one path in device pixels. */
export function pathOnSheet(brush: Brush, { pieces, upright }: PathShape): Path2D {
  const merged = new Path2D();
  for (const { outline, place } of pieces)
    merged.addPath(outlinePath(outline), new DOMMatrix(matrixOf(brush, place, outline.unit, upright)));
  return merged;
}

const patterns = new Map<string, CanvasPattern>();

/**
 * A texture in a colour, its tiles in device pixels from the canvas's upper left corner; the plain colour where it
 * can't be made.
 */
export function patternOf(
  { context, dpr, em }: Pick<Brush, 'context' | 'dpr' | 'em'>,
  texture: PathShape['paint'],
  colour: string,
): CanvasPattern | string {
  if (texture === 'fill' || texture === 'stroke') return colour;
  const { size, path, line } = tiles[texture](pitchFor(em) * dpr);
  const key = `${texture} ${colour} ${size}`;
  const cached = patterns.get(key);
  if (cached) return cached;
  const tile =
    typeof document === 'undefined'
      ? new OffscreenCanvas(size, size)
      : Object.assign(document.createElement('canvas'), { width: size, height: size });
  const on = tile.getContext('2d') as Context | null;
  if (!on) return colour;
  if (line === null) {
    on.fillStyle = colour;
    on.fill(new Path2D(path));
  } else {
    on.strokeStyle = colour;
    on.lineWidth = line;
    on.stroke(new Path2D(path));
  }
  const pattern = context.createPattern(tile, 'repeat');
  if (!pattern) return colour;
  patterns.set(key, pattern);
  return pattern;
}

export const hundredths = (value: number): number => Math.round(value * 100) / 100;

/** All drawings of a page share one animation frame; each is drawn at most once in it, in the order of the requests. */
const waiting = new Set<() => void>();
let asked = 0;

export function drawSoon(draw: () => void): void {
  waiting.add(draw);
  if (asked === 0) asked = requestAnimationFrame(drawAll);
}

export function forgetDrawing(draw: () => void): void {
  waiting.delete(draw);
}

function drawAll(): void {
  asked = 0;
  const now = [...waiting];
  waiting.clear();
  for (const draw of now) draw();
}

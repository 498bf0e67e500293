'use client';

import { numberText, signed } from '@/shared/text/number';
import { type Cell, cellSizes, heads, type MapFrame, type MapInks, seen, xOf, yOf } from './map-frame';
import type { Stamps } from './map-stamps';

/** The data to paint; `shades` and `far` are indexed by student × column, `order` gives the student of each row. */
export type MapPicture = {
  shades: Int8Array;
  far: Float64Array;
  order: readonly number[];
  names: readonly string[];
  letters: readonly string[];
  begins: readonly boolean[];
  classShades: Int8Array;
  classFar: readonly (number | null)[];
};
type Painting = {
  context: CanvasRenderingContext2D;
  frame: MapFrame;
  inks: MapInks;
  stamps: Stamps;
  dpr: number;
  picture: MapPicture;
  body: MapBody;
  chosen: Cell | null;
  under: Cell | null;
};

/** Paints only the visible part of the map: cells, then names and heads over them, so that these stay in place. */
export function paintMap(painting: Painting): void {
  const { context, frame, inks, dpr } = painting;
  context.setTransform(dpr, 0, 0, dpr, 0, 0);
  context.fillStyle = inks.ground;
  context.fillRect(0, 0, frame.width, frame.height);
  const part = seen(frame);
  paintCells(painting);
  paintNames(painting, part);
  paintHeads(painting, part);
  paintRules(painting);
  for (const [cell, weight] of [
    [painting.under, 1],
    [painting.chosen, 2],
  ] as const)
    if (cell) outline(painting, cell, weight);
}

type Seen = ReturnType<typeof seen>;

/** Moves what is already painted, and paints only the new part. */
function paintCells(painting: Painting): void {
  const { context, frame, dpr, body } = painting;
  const canvas = body.canvas(painting, (inside, part) => paintPart(painting, inside, part));
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.drawImage(canvas, Math.round(frame.names * dpr), Math.round(frame.head * dpr));
  context.setTransform(dpr, 0, 0, dpr, 0, 0);
}

/** The cells in a part of the body; the origin of `context` is the body's corner. */
function paintPart({ frame, stamps, picture, inks }: Painting, context: CanvasRenderingContext2D, part: Part): void {
  const { width, height } = cellSizes[frame.cell];
  const {
    columns: [from, to],
    rows: [top, bottom],
  } = seen({
    ...frame,
    names: 0,
    head: 0,
    width: part.width,
    height: part.height,
    left: frame.left + part.x,
    top: frame.top + part.y,
  });
  const x = (column: number) => column * width - frame.left,
    y = (row: number) => row * height - frame.top;
  for (let row = top; row < bottom; row += 1) {
    const student = picture.order[row]! * frame.columns;
    for (let column = from; column < to; column += 1) {
      const shade = picture.shades[student + column]!;
      // At the size that shows the whole class, cells within tolerance have the ground's colour and need no painting.
      if (shade !== 0 || frame.cell !== 'whole') stamps.put(context, shade, x(column), y(row));
    }
  }
  if (frame.cell !== 'numbers') return;
  context.fillStyle = inks.ink;
  context.font = `13px ${inks.family}`;
  context.textAlign = 'right';
  context.textBaseline = 'middle';
  for (let row = top; row < bottom; row += 1) {
    const student = picture.order[row]! * frame.columns;
    for (let column = from; column < to; column += 1) {
      const far = picture.far[student + column]!;
      if (!Number.isNaN(far)) context.fillText(signed(far), x(column) + width - 6, y(row) + height / 2);
    }
  }
}

function paintNames({ context, frame, inks, picture }: Painting, { rows: [top, bottom] }: Seen): void {
  const { height } = cellSizes[frame.cell];
  context.fillStyle = inks.ground;
  context.fillRect(0, 0, frame.names, frame.height);
  // At the size that shows the whole class, there is no room for every name: every nth is written, the others on
  // hovering.
  const step = Math.max(1, Math.ceil(15 / height));
  context.font = `13px ${inks.family}`;
  context.textAlign = 'left';
  context.textBaseline = 'middle';
  context.fillStyle = inks.ink;
  for (let row = top - (top % step); row < bottom; row += step) {
    const name = step === 1 ? picture.names[picture.order[row]!]! : numberText(row + 1);
    context.fillText(shortened(context, name, frame.names - 12), 4, yOf(frame, row) + height / 2);
  }
}

function paintHeads({ context, frame, inks, stamps, picture }: Painting, { columns: [from, to] }: Seen): void {
  const { width } = cellSizes[frame.cell];
  context.fillStyle = inks.ground;
  context.fillRect(0, 0, frame.width, frame.head);
  context.font = `13px ${inks.family}`;
  context.textBaseline = 'middle';
  context.textAlign = 'center';
  context.fillStyle = inks.ink;
  const step = Math.max(1, Math.ceil(24 / width));
  context.save();
  context.beginPath();
  context.rect(frame.names, 0, frame.width - frame.names, frame.head);
  context.clip();
  for (let column = from; column < to; column += 1) {
    const middle = xOf(frame, column) + width / 2;
    if (column % step === 0) {
      context.fillStyle = inks.ink;
      context.fillText(picture.letters[column]!, middle, heads.letters / 2);
    }
    stamps.put(
      context,
      picture.classShades[column]!,
      xOf(frame, column),
      heads.letters + (heads.class - cellSizes[frame.cell].height) / 2,
    );
    const far = picture.classFar[column];
    if (frame.cell === 'numbers' && typeof far === 'number') {
      context.fillStyle = inks.ink;
      context.textAlign = 'right';
      context.fillText(signed(far), xOf(frame, column) + width - 6, heads.letters + heads.class / 2);
      context.textAlign = 'center';
    }
  }
  context.restore();
  context.fillStyle = inks.quiet;
  context.textAlign = 'left';
  context.fillText('the class', 4, heads.letters + heads.class / 2);
}

/** Where a line begins among several, and the edges of names and heads. */
function paintRules({ context, frame, inks, picture }: Painting): void {
  context.fillStyle = inks.edge;
  picture.begins.forEach((begins, column) => {
    const x = Math.round(xOf(frame, column)) - 1;
    if (begins && column > 0 && x > frame.names) context.fillRect(x, 0, 1, frame.height);
  });
  context.fillRect(0, frame.head - 1, frame.width, 1);
  context.fillRect(frame.names - 1, 0, 1, frame.height);
}

function outline({ context, frame, inks }: Painting, { row, column }: Cell, weight: number): void {
  const { width, height } = cellSizes[frame.cell];
  const x = xOf(frame, column),
    y = yOf(frame, row);
  if (x + width <= frame.names || y + height <= frame.head) return;
  context.strokeStyle = inks.accent;
  context.lineWidth = weight;
  context.strokeRect(x - weight / 2, y - weight / 2, width + weight - 1, height + weight - 1);
  context.fillStyle = inks.accent;
  context.fillRect(x, frame.head - 4, width - 1, 3);
  context.fillRect(frame.names - 4, y, 3, height - 1);
}

/** Shortened names, by font and room: measuring text is the slowest part of a frame. */
const fitted = new Map<string, string>();

function shortened(context: CanvasRenderingContext2D, text: string, room: number): string {
  const key = `${context.font} ${room} ${text}`;
  const known = fitted.get(key);
  if (known !== undefined) return known;
  const signs = [...text];
  let fits = text;
  while (signs.length > 1 && context.measureText(fits).width > room) {
    signs.pop();
    fits = `${signs.join('').trimEnd()}…`;
  }
  if (fitted.size > 5000) fitted.clear();
  fitted.set(key, fits);
  return fits;
}

type MapBody = {
  /** Nothing painted before is valid any more: another order, size or colour. */
  forget: () => void;
  /** The visible cells, as a canvas in pixels of the screen; `paint` is called only for new parts. */
  canvas: (painting: Painting, paint: (context: CanvasRenderingContext2D, part: Part) => void) => HTMLCanvasElement;
};
/** A part of the body, in CSS px from its upper left corner. */
type Part = { x: number; y: number; width: number; height: number };

/**
 * The cells without names and heads: on scrolling, what is already painted is moved and only the new edge is painted.
 */
export function mapBody(): MapBody {
  const canvases = [document.createElement('canvas'), document.createElement('canvas')];
  let at: { left: number; top: number } | null = null;
  return {
    forget: () => {
      at = null;
    },
    canvas: ({ frame, dpr, inks }, paint) => {
      const width = Math.max(1, frame.width - frame.names),
        height = Math.max(1, frame.height - frame.head);
      const [before, now] = canvases as [HTMLCanvasElement, HTMLCanvasElement];
      if (at && before.width === Math.round(width * dpr) && at.left === frame.left && at.top === frame.top)
        return before;
      now.width = Math.round(width * dpr);
      now.height = Math.round(height * dpr);
      const context = now.getContext('2d', { alpha: false })!;
      context.fillStyle = inks.ground;
      context.fillRect(0, 0, now.width, now.height);
      const right = at ? frame.left - at.left : width,
        down = at ? frame.top - at.top : height;
      const moved =
        at !== null &&
        before.width === now.width &&
        before.height === now.height &&
        Math.abs(right) < width &&
        Math.abs(down) < height;
      if (moved) context.drawImage(before, Math.round(-right * dpr), Math.round(-down * dpr));
      context.setTransform(dpr, 0, 0, dpr, 0, 0);
      for (const part of moved ? edges(width, height, right, down) : [{ x: 0, y: 0, width, height }]) {
        context.save();
        context.beginPath();
        context.rect(part.x, part.y, part.width, part.height);
        context.clip();
        paint(context, part);
        context.restore();
      }
      at = { left: frame.left, top: frame.top };
      canvases.reverse();
      return now;
    },
  };
}

/** What becomes visible when the body moves by this much to the right and down. */
function edges(width: number, height: number, right: number, down: number): Part[] {
  const across = { x: 0, y: down > 0 ? height - down : 0, width, height: Math.abs(down) };
  const along = { x: right > 0 ? width - right : 0, y: 0, width: Math.abs(right), height };
  return [...(down === 0 ? [] : [across]), ...(right === 0 ? [] : [along])];
}

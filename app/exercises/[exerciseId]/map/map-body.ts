'use client';
import type { Painting } from './paint-map';

export type MapBody = {
  /** Nothing that was painted before holds any more: another order, size or colour. */
  forget: () => void;
  /** The cells that are seen, as a canvas in points of the screen; `paint` is asked for the parts that are new only. */
  canvas: (painting: Painting, paint: (context: CanvasRenderingContext2D, part: Part) => void) => HTMLCanvasElement;
};
/** A part of the body, in CSS px from its upper left corner. */
export type Part = { x: number; y: number; width: number; height: number };

/** The cells apart from names and heads: while they are scrolled, what was painted is moved and only the new edge is painted. */
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

/** What comes into sight when the body moves by so much to the right and down. */
function edges(width: number, height: number, right: number, down: number): Part[] {
  const across = { x: 0, y: down > 0 ? height - down : 0, width, height: Math.abs(down) };
  const along = { x: right > 0 ? width - right : 0, y: 0, width: Math.abs(right), height };
  return [...(down === 0 ? [] : [across]), ...(right === 0 ? [] : [along])];
}

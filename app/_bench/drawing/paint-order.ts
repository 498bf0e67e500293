import { type Brush, freshContext, type Surface } from '@/app/_line/brush';
import { barFrom, thickness, xOf } from '@/app/_line/frame';
import { paintShapes } from '@/app/_line/painters';
import { spacingOf } from '@/shared/editing/document';
import { lineShapes } from '@/shared/line/shapes';
import { prepareLine } from '@/shared/measure/prepared-line';
import { placeLetters, type PlacedLine } from '@/shared/outline/place-letters';
import type { Pack } from '@/shared/schemas/pack';
import type { LineOrder, Order } from './order';
import { paintRuler } from './paint-ruler';

/** Paints one order onto its canvas, which takes the order's size. */
export function paintOrder(surface: Surface, pack: Pack, order: Order): void {
  const { frame, dpr } = order;
  const context = freshContext(surface, frame, dpr);
  if (!context) return;
  const placed = placeLetters(pack, spacingOf(order.document));
  if (order.kind === 'ruler') return paintRuler(context, prepareLine(pack), placed, order);
  const brush = { context, dpr, frame, inks: order.inks, em: frame.scale * pack.unitsPerEm };
  const shapes = lineShapes({
    pack,
    spacing: order.document,
    looks: { ...order.looks, why: order.why },
    chosen: order.head,
    open: order.window,
    overlays: order.under ? [{ spacing: order.under, heldAt: order.head }] : [],
  });
  paintShapes(brush, shapes);
  if (order.chosen) paintChosen(brush, placed, order.chosen);
}

/**
 * Ticks over and under the chosen gap, clear of the letters; a bracket over a run; bars where the keyboard is: a frame
 * would cut through the letters.
 */
function paintChosen(
  { context, dpr, frame, inks }: Brush,
  placed: PlacedLine,
  { run, length, bar }: NonNullable<LineOrder['chosen']>,
): void {
  const from = xOf(frame, placed.gaps[run.first]?.centre ?? 0);
  const to = xOf(frame, placed.gaps[run.last]?.centre ?? 0);
  const [left, right] = [Math.min(from, to), Math.max(from, to)];
  context.setTransform(dpr, 0, 0, dpr, 0, 0);
  context.fillStyle = inks.note;
  const width = thickness(length > 9 ? 2 : 1, dpr);
  const [first, last] = [barFrom(left, width, dpr), barFrom(right, width, dpr)];
  if (bar > 0) {
    for (const y of [0, frame.height - 4])
      context.fillRect(Math.round((left + right - bar) / 2), y, Math.round(bar), 4);
  }
  for (const [y, side] of [
    [0, 1],
    [frame.height - length, -1],
  ] as const) {
    context.fillRect(first, y, width, length);
    if (run.first === run.last) continue;
    context.fillRect(last, y, width, length);
    context.fillRect(first, side > 0 ? 0 : frame.height - width, last + width - first, width);
  }
}

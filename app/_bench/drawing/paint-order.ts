import { placeLetters } from '@/shared/outline/place-letters';
import { spacingOf } from '@/shared/editing/document';
import type { Pack } from '@/shared/schemas/pack';
import { lineArt } from './art';
import type { LineOrder, Order } from './order';
import { paintLine, paintUnder, type Painting } from './paint-line';
import { paintChosen, paintWhy } from './paint-marks';
import { paintRuler } from './paint-ruler';

export type Surface = OffscreenCanvas | HTMLCanvasElement;
export type Context = OffscreenCanvasRenderingContext2D | CanvasRenderingContext2D;

/** Paints one order onto its canvas, which takes the order's size. */
export function paintOrder(surface: Surface, pack: Pack, order: Order): void {
  const context = surface.getContext('2d') as Context | null;
  if (!context) return;
  const { frame, dpr } = order;
  const [across, down] = [Math.round(frame.width * dpr), Math.round(frame.height * dpr)];
  if (surface.width !== across) surface.width = across;
  if (surface.height !== down) surface.height = down;
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.clearRect(0, 0, across, down);
  if (order.kind === 'ruler')
    return paintRuler(context, lineArt(pack).line, placeLetters(pack, spacingOf(order.document)), order);
  paintSet(context, pack, order);
}

function paintSet(context: Context, pack: Pack, order: LineOrder): void {
  const { frame, dpr, document, inks, looks, window } = order;
  const painting: Painting = {
    context,
    dpr,
    frame,
    art: lineArt(pack),
    placed: placeLetters(pack, spacingOf(document)),
    document,
    inks,
    looks,
    window,
  };
  if (order.under) paintUnder(underOf(painting, order.under, order.head));
  paintLine(painting);
  if (order.why) paintWhy(painting, order.head);
  if (order.chosen) paintChosen(painting, order.chosen);
}

/** The other setting, laid so that the letter in front of the chosen gap is the same in both. */
function underOf(painting: Painting, document: LineOrder['document'], pair: number): Painting {
  const placed = placeLetters(painting.art.pack, spacingOf(document));
  const shift = (painting.placed.letters[pair]?.x ?? 0) - (placed.letters[pair]?.x ?? 0);
  const frame = { ...painting.frame, originX: painting.frame.originX + shift * painting.frame.scale };
  return { ...painting, placed, document, frame };
}

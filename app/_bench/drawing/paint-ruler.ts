import type { PlacedLine } from '@/shared/outline/place-letters';
import type { PreparedLine } from '@/shared/measure/prepared-line';
import type { CssPx } from '@/shared/units';
import { opennessOf } from '../openness';
import { spokenOf } from '../usual';
import { barFrom, onGrid, thickness, xOf } from '@/app/_line/frame';
import type { RulerOrder } from './order';
import type { Context } from '@/app/_line/brush';

/** Height of the ruler's middle line above its foot. */
const CENTRE = 46;
const FOOT = 70;
/** Thickness of a gauge: one pixel where there is one to a CSS px, three where there are two. */
const GAUGE = 1.25;
const WEDGE = 6.5;

/**
 * One gauge per gap, as high as the gap looks open; a dotted rule through all at the middle of its kind. Wedges under a
 * gauge point in where the pair is tighter than designers usually set it, and out where it is wider. All edges are
 * between pixels.
 */
export function paintRuler(context: Context, line: PreparedLine, placed: PlacedLine, order: RulerOrder): void {
  const { dpr, frame, document, inks, head } = order;
  const openness = opennessOf(line, document);
  context.setTransform(dpr, 0, 0, dpr, 0, 0);
  if (order.reference) paintBands(context, line, placed, order);
  paintCentre(context, placed, order);
  const wedges = new Path2D();
  const gauges = new Path2D();
  for (const gap of placed.gaps) {
    const centre = openness.centres[gap.index];
    if (centre === null || centre === undefined) continue;
    const x = xOf(frame, gap.centre);
    const height = Math.min(1.45, (openness.gaps[gap.index] ?? 0) / centre) * CENTRE;
    if (gap.index === head) fill(context, gauge(new Path2D(), x, height, thickness(3, dpr), dpr), inks.chosen);
    else gauge(gauges, x, height, thickness(GAUGE, dpr), dpr);
    const outside = order.usual && spokenOf(line.pack, document, order.usual, order.usual.size, gap.index);
    if (outside)
      addWedges(wedges, barFrom(x, thickness(GAUGE, dpr), dpr) + thickness(GAUGE, dpr) / 2, WEDGE, outside === 'wider');
  }
  fill(context, gauges, inks.gauge);
  fill(context, wedges, inks.wedge);
}

/** A stem on the foot and a bar of the same thickness across its top, centred on it. */
function gauge(path: Path2D, x: CssPx, height: CssPx, thick: CssPx, dpr: number): Path2D {
  const left = barFrom(x, thick, dpr);
  const top = barFrom(FOOT - height, thick, dpr);
  const arm = onGrid(4.5, dpr);
  path.rect(left, top, thick, FOOT - top);
  path.rect(left - arm, top, arm, thick);
  path.rect(left + thick, top, arm, thick);
  return path;
}

function paintCentre(context: Context, placed: PlacedLine, { dpr, frame, inks }: RulerOrder): void {
  const first = placed.gaps[0];
  const last = placed.gaps[placed.gaps.length - 1];
  if (!first || !last) return;
  const [a, b] = [xOf(frame, first.centre), xOf(frame, last.centre)];
  const thick = thickness(1, dpr);
  const y = barFrom(FOOT - CENTRE, thick, dpr) + thick / 2;
  const path = new Path2D();
  path.moveTo(onGrid(Math.min(a, b) - 14, dpr), y);
  path.lineTo(onGrid(Math.max(a, b) + 14, dpr), y);
  context.setLineDash([thick, 4 * thick]);
  stroke(context, path, inks.rule, thick);
  context.setLineDash([]);
}

/** Two wedges at x: pointing at each other when tighter, away from each other when wider. */
function addWedges(path: Path2D, x: number, size: number, wider: boolean): void {
  const y = FOOT + 11;
  for (const side of [-1, 1]) {
    const tip = x + side * (wider ? size + 2 : 1.5);
    const back = x + side * (wider ? 1.5 : size + 2);
    path.moveTo(tip, y);
    path.lineTo(back, y - size * 0.75);
    path.lineTo(back, y + size * 0.75);
    path.closePath();
  }
}

function paintBands(
  context: Context,
  line: PreparedLine,
  placed: PlacedLine,
  { dpr, frame, inks, reference, document }: RulerOrder,
): void {
  if (!reference) return;
  const openness = opennessOf(line, document);
  // The reference with its own tracking discounted, so that only evenness is compared.
  const wanted = opennessOf(line, reference.document);
  for (const gap of placed.gaps) {
    const centre = openness.centres[gap.index];
    const theirCentre = wanted.centres[gap.index];
    const tolerance = reference.tolerances[gap.index];
    if (!centre || !theirCentre || tolerance === null || tolerance === undefined) continue;
    const middle = ((wanted.gaps[gap.index] ?? 0) / theirCentre) * CENTRE;
    const half = (tolerance / theirCentre) * CENTRE;
    const [stem, thick] = [thickness(GAUGE, dpr), thickness(1, dpr)];
    const left = barFrom(xOf(frame, gap.centre), stem, dpr) - onGrid(6.5, dpr);
    const [top, bottom] = [onGrid(FOOT - middle - half, dpr), onGrid(FOOT - middle + half, dpr)];
    const band = new Path2D();
    band.rect(
      left + thick / 2,
      top + thick / 2,
      2 * onGrid(6.5, dpr) + stem - thick,
      Math.max(thick, bottom - top - thick),
    );
    fill(context, band, inks.bandGround);
    stroke(context, band, inks.band, thick);
  }
}

function fill(context: Context, path: Path2D, colour: string): void {
  context.fillStyle = colour;
  context.fill(path);
}

function stroke(context: Context, path: Path2D, colour: string, width: number): void {
  context.strokeStyle = colour;
  context.lineWidth = width;
  context.stroke(path);
}

import type { PlacedLine } from '@/shared/outline/place-letters';
import type { PreparedLine } from '@/shared/measure';
import { CLEAR, excessOf, opennessOf, SLIGHT } from '../openness';
import { xOf } from './frame';
import type { RulerOrder } from './order';
import type { Context } from './paint-order';

/** CSS px. */
export const RULER_HEIGHT = 92;
/** Height of the middle of the line over the foot of the ruler. */
const CENTRE = 46;
const FOOT = 70;

/**
 * One gauge per gap, its height how open the gap looks; a dotted rule through all at the middle of its kind.
 * Wedges under a gauge point in where it is too tight and out where it is too loose.
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
    const path = gap.index === head ? new Path2D() : gauges;
    path.moveTo(x, FOOT);
    path.lineTo(x, FOOT - height);
    path.moveTo(x - 5, FOOT - height);
    path.lineTo(x + 5, FOOT - height);
    if (gap.index === head) stroke(context, path, inks.chosen, 3);
    const excess = excessOf(line, document, openness, gap.index) ?? 0;
    if (Math.abs(excess) >= SLIGHT) addWedges(wedges, x, Math.abs(excess) < CLEAR ? 4 : 6.5, excess > 0);
  }
  stroke(context, gauges, inks.gauge, 1.5);
  context.fillStyle = inks.wedge;
  context.fill(wedges);
}

function paintCentre(context: Context, placed: PlacedLine, { frame, inks }: RulerOrder): void {
  const first = placed.gaps[0];
  const last = placed.gaps[placed.gaps.length - 1];
  if (!first || !last) return;
  const [a, b] = [xOf(frame, first.centre), xOf(frame, last.centre)];
  const path = new Path2D();
  path.moveTo(Math.min(a, b) - 14, FOOT - CENTRE);
  path.lineTo(Math.max(a, b) + 14, FOOT - CENTRE);
  context.setLineDash([1, 4]);
  context.lineCap = 'round';
  stroke(context, path, inks.rule, 1);
  context.setLineDash([]);
  context.lineCap = 'butt';
}

/** Two wedges at x: points together when tight, turned away when loose. */
function addWedges(path: Path2D, x: number, size: number, loose: boolean): void {
  const y = FOOT + 11;
  for (const side of [-1, 1]) {
    const tip = x + side * (loose ? size + 2 : 1.5);
    const back = x + side * (loose ? 1.5 : size + 2);
    path.moveTo(tip, y);
    path.lineTo(back, y - size * 0.75);
    path.lineTo(back, y + size * 0.75);
    path.closePath();
  }
}

function paintBands(context: Context, line: PreparedLine, placed: PlacedLine, { frame, inks, reference, document }: RulerOrder): void {
  if (!reference) return;
  const openness = opennessOf(line, document);
  // The reference at its own tightness, so that only evenness is compared.
  const wanted = opennessOf(line, reference.document);
  for (const gap of placed.gaps) {
    const centre = openness.centres[gap.index];
    const theirCentre = wanted.centres[gap.index];
    const tolerance = reference.tolerances[gap.index];
    if (!centre || !theirCentre || tolerance === null || tolerance === undefined) continue;
    const middle = ((wanted.gaps[gap.index] ?? 0) / theirCentre) * CENTRE;
    const half = (tolerance / theirCentre) * CENTRE;
    const band = new Path2D();
    band.rect(xOf(frame, gap.centre) - 7, FOOT - middle - half, 14, 2 * half);
    context.fillStyle = inks.bandGround;
    context.fill(band);
    stroke(context, band, inks.band, 1);
  }
}

function stroke(context: Context, path: Path2D, colour: string, width: number): void {
  context.strokeStyle = colour;
  context.lineWidth = width;
  context.stroke(path);
}

import { pairProfiles } from '@/shared/measure';
import type { Run } from '@/shared/editing/commands';
import type { CssPx, FontUnits } from '@/shared/units';
import { matrixAt, type Painting } from './paint-line';
import { barFrom, thickness, xOf, yOf } from '@/app/_line/frame';

/** Ticks over and under the chosen gap, clear of the letters; a bracket over a run; bars where the keyboard is: a frame would cut through the letters. */
export function paintChosen(
  { context, dpr, frame, placed, inks }: Painting,
  { run, length, bar }: { run: Run; length: CssPx; bar: CssPx },
): void {
  const from = xOf(frame, placed.gaps[run.from]?.centre ?? 0);
  const to = xOf(frame, placed.gaps[run.to]?.centre ?? 0);
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
    if (run.from === run.to) continue;
    context.fillRect(last, y, width, length);
    context.fillRect(first, side > 0 ? 0 : frame.height - width, last + width - first, width);
  }
}

/** Both edges of a gap as the outline has them (thin) and as they are seen (heavier): the distances that the measure weighs. */
export function paintWhy(painting: Painting, pair: number): void {
  const { context, dpr, frame, placed, art, document, inks } = painting;
  const total = (art.line.pairs[pair]?.builtIn ?? 0) + document.tracking + (document.offsets[pair] ?? 0);
  const profiles = pairProfiles(art.line, pair, total);
  const matrix = matrixAt(frame, placed.letters[pair]?.x ?? 0, dpr, art.pack.unitsPerEm / 1000);
  const stroke = (lines: readonly (readonly number[])[], width: number, colour: string) => {
    const path = new Path2D();
    for (const points of lines) addOpen(path, points);
    const placedPath = new Path2D();
    placedPath.addPath(path, matrix);
    context.setTransform(1, 0, 0, 1, 0, 0);
    context.lineWidth = width * dpr;
    context.strokeStyle = colour;
    context.stroke(placedPath);
  };
  paintAcross(painting, placed.letters[pair]?.x ?? 0, crossLines(profiles.leftSeen, profiles.rightSeen));
  stroke([...profiles.leftDrawn, ...profiles.rightDrawn], 1, inks.cool);
  stroke([profiles.leftSeen, profiles.rightSeen], 2, inks.note);
}

/** Level lines, each a whole row of pixels; in 1/1000 em from the origin of the letter that stands at `x`. */
function paintAcross(
  { context, dpr, frame, art, inks }: Painting,
  x: FontUnits,
  lines: readonly (readonly number[])[],
): void {
  const unit = art.pack.unitsPerEm / 1000;
  const thick = thickness(1, dpr);
  context.setTransform(dpr, 0, 0, dpr, 0, 0);
  context.fillStyle = inks.warm;
  for (const [left, height, right] of lines) {
    const [from, to] = [xOf(frame, x + left! * unit), xOf(frame, x + right! * unit)];
    context.fillRect(Math.min(from, to), barFrom(yOf(frame, height! * unit), thick, dpr), Math.abs(to - from), thick);
  }
}

/** Lines across the gap, one at every third height that counts: enough to see how deep the measure looks. */
function crossLines(left: readonly number[], right: readonly number[]): number[][] {
  const lines: number[][] = [];
  for (let i = 0; i + 1 < Math.min(left.length, right.length); i += 6)
    lines.push([left[i]!, left[i + 1]!, right[i]!, right[i + 1]!]);
  return lines;
}

function addOpen(path: Path2D, points: readonly number[]): void {
  for (let i = 0; i + 1 < points.length; i += 2) {
    if (i === 0) path.moveTo(points[i]!, points[i + 1]!);
    else path.lineTo(points[i]!, points[i + 1]!);
  }
}

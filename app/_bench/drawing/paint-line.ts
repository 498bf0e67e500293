import { pairWhite } from '@/shared/measure';
import type { SpacingDocument } from '@/shared/editing/document';
import type { PlacedLine } from '@/shared/outline/place-letters';
import type { Looks } from '../session/looks';
import type { LineArt } from './art';
import type { Frame } from './frame';
import type { Inks } from './inks';
import { dots, hatch } from './textures';

export type Painting = {
  readonly context: CanvasRenderingContext2D;
  readonly dpr: number;
  readonly frame: Frame;
  readonly art: LineArt;
  readonly placed: PlacedLine;
  readonly document: SpacingDocument;
  readonly inks: Inks;
  readonly looks: Looks;
  /** First and last letter that is not covered. */
  readonly window: { readonly from: number; readonly to: number };
};

/** White, letters and counters, in that order. Everything is merged into one path per ink. */
export function paintLine(painting: Painting): void {
  const { looks } = painting;
  if (looks.guides) paintGuides(painting);
  if (looks.white || looks.hidden) paintWhite(painting);
  if (!looks.hidden) fill(painting, lettersPath(painting), painting.inks.ink);
  if (looks.counters) paintCounters(painting);
}

/** Another setting of the same line as thin outlines. */
export function paintUnder(painting: Painting): void {
  const { context, dpr, inks } = painting;
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.strokeStyle = inks.note;
  context.lineWidth = 1.25 * dpr;
  context.lineJoin = 'round';
  context.stroke(lettersPath(painting));
}

function lettersPath({ art, frame, placed, window, dpr }: Painting): Path2D {
  const merged = new Path2D();
  for (let letter = window.from; letter <= window.to; letter += 1) {
    const place = placed.letters[letter]!;
    merged.addPath(art.glyphs[place.glyph]!, matrixAt(frame, place.x, dpr));
  }
  return merged;
}

/** Font units (or, with `unit`, other units of that size) at `x` on the line, into device pixels. */
export function matrixAt(frame: Frame, x: number, dpr: number, unit = 1): DOMMatrix {
  const across = (frame.flipX ? -1 : 1) * frame.scale * unit * dpr;
  const up = (frame.flipY ? 1 : -1) * frame.scale * unit * dpr;
  const origin = frame.originX + x * frame.scale;
  const e = (frame.flipX ? 2 * frame.axisX - origin : origin) * dpr;
  const f = (frame.flipY ? frame.height - frame.baselineY : frame.baselineY) * dpr;
  return new DOMMatrix([across, 0, 0, up, e, f]);
}

function fill({ context }: Painting, path: Path2D, ink: string | CanvasPattern): void {
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.fillStyle = ink;
  context.fill(path);
}

function paintWhite(painting: Painting): void {
  const { art, frame, placed, window, dpr, document, inks, context } = painting;
  const merged = new Path2D();
  for (let gap = window.from; gap < window.to; gap += 1) {
    const total = (art.line.pairs[gap]?.builtIn ?? 0) + document.tracking + (document.offsets[gap] ?? 0);
    const path = new Path2D();
    traceWhite(path, edgesOf(art, gap), total);
    merged.addPath(path, matrixAt(frame, placed.letters[gap]!.x, dpr, art.pack.unitsPerEm / 1000));
  }
  fill(painting, merged, hatch(context, inks.warm, dpr, grain(painting)));
}

type Edges = { readonly left: readonly number[]; readonly right: readonly number[] };
const edges = new WeakMap<LineArt, Map<number, Edges>>();
/** So far apart that no edge of one letter hides the other's. */
const APART = 10_000;

/** Both edges of a gap, taken once: an offset only moves the right one. */
function edgesOf(art: LineArt, gap: number): Edges {
  const kept = edges.get(art) ?? new Map<number, Edges>();
  edges.set(art, kept);
  const known = kept.get(gap);
  if (known) return known;
  const outline = pairWhite(art.line, gap, APART);
  const half = outline.length / 2;
  const right: number[] = [];
  for (let i = outline.length - 2; i >= half; i -= 2) right.push(outline[i]! - APART, outline[i + 1]!);
  const made = { left: outline.slice(0, half), right };
  kept.set(gap, made);
  return made;
}

function traceWhite(path: Path2D, { left, right }: Edges, total: number): void {
  for (let i = 0; i < left.length; i += 2) {
    if (i === 0) path.moveTo(left[0]!, left[1]!);
    else path.lineTo(left[i]!, left[i + 1]!);
  }
  for (let i = right.length - 2; i >= 0; i -= 2) path.lineTo(Math.max(left[i]!, right[i]! + total), right[i + 1]!);
  path.closePath();
}

function paintCounters(painting: Painting): void {
  const { art, frame, placed, window, dpr, inks, context } = painting;
  const merged = new Path2D();
  for (let letter = window.from; letter <= window.to; letter += 1) {
    const counters = art.counters[letter];
    if (counters) merged.addPath(counters, matrixAt(frame, placed.letters[letter]!.x, dpr, art.pack.unitsPerEm / 1000));
  }
  fill(painting, merged, dots(context, inks.cool, dpr, grain(painting)));
}

/** Pitch of a texture in CSS px: finer on small lines. */
function grain({ frame, art }: Painting): number {
  const em = frame.scale * art.pack.unitsPerEm;
  return em >= 110 ? 7 : em >= 48 ? 5 : 3;
}

function paintGuides({ context, art, frame, dpr, inks }: Painting): void {
  const { vertical } = art.pack;
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.fillStyle = inks.rule;
  for (const height of [vertical.ascenderTop, vertical.capHeight, vertical.xHeight, 0, vertical.descender]) {
    const y = (frame.flipY ? frame.height - frame.baselineY + height * frame.scale : frame.baselineY - height * frame.scale) * dpr;
    context.fillRect(0, Math.round(y), frame.width * dpr, Math.max(1, Math.round(dpr / 2)));
  }
}

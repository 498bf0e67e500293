import type { SpacingDocument } from '@/shared/editing/document';
import type { PlacedLine } from '@/shared/outline/place-letters';
import type { CssPx } from '@/shared/units';
import type { Looks } from '@/app/_line/looks';
import type { LineArt } from './art';
import { type Frame, xOf, yOf } from '@/app/_line/frame';
import type { Inks } from '@/app/_line/inks';
import { dots, hatch, rings } from '@/app/_line/textures';
import { traceWhite, whiteEdges } from './white-edges';
import type { Context } from './paint-order';

export type Painting = {
  readonly context: Context;
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

/** White between, white inside, and the letters over both. Everything is merged into one path per texture. */
export function paintLine(painting: Painting): void {
  const { looks } = painting;
  if (looks.guides) paintGuides(painting);
  if (looks.white || looks.hidden) paintWhite(painting);
  if (looks.counters) paintInsides(painting);
  if (!looks.hidden) paintLetters(painting);
}

function paintLetters(painting: Painting): void {
  const { context, inks } = painting;
  context.fillStyle = inks.ink;
  eachLetter(painting, (glyph) => context.fill(glyph));
}

/** Another setting of the same line as thin outlines. */
export function paintUnder(painting: Painting): void {
  const { context, frame, inks } = painting;
  context.strokeStyle = inks.note;
  context.lineWidth = 1.25 / frame.scale;
  context.lineJoin = 'round';
  eachLetter(painting, (glyph) => context.stroke(glyph));
}

/** Draws each letter's own path where it stands: the browser keeps what it made of the path from frame to frame. */
function eachLetter({ context, art, frame, placed, window, dpr }: Painting, draw: (glyph: Path2D) => void): void {
  const across = (frame.flipX ? -1 : 1) * frame.scale * dpr;
  const up = (frame.flipY ? 1 : -1) * frame.scale * dpr;
  const y = (frame.flipY ? frame.height - frame.baselineY : frame.baselineY) * dpr;
  for (let letter = window.from; letter <= window.to; letter += 1) {
    const place = placed.letters[letter]!;
    const x = xOf(frame, place.x) * dpr;
    context.setTransform(across, 0, 0, up, x, y);
    draw(art.glyphs[place.glyph]!);
  }
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
    merged.addPath(
      whitePath(art, gap, total),
      matrixAt(frame, placed.letters[gap]!.x, dpr, art.pack.unitsPerEm / 1000),
    );
  }
  fill(
    painting,
    merged,
    painting.looks.hidden && emOf(painting) < SOLID ? inks.warm : hatch(context, inks.warm, dpr, grain(painting)),
  );
}

/** The newest white of each gap: a nudge changes one of them only. */
const whites = new WeakMap<LineArt, Map<number, { total: number; path: Path2D }>>();

function whitePath(art: LineArt, gap: number, total: number): Path2D {
  const kept = whites.get(art) ?? new Map<number, { total: number; path: Path2D }>();
  whites.set(art, kept);
  const known = kept.get(gap);
  if (known?.total === total) return known.path;
  const path = new Path2D();
  traceWhite(path, whiteEdges(art, gap), total);
  kept.set(gap, { total, path });
  return path;
}

/** Dots in what the measure counts, rings where a letter is open to one side: there the hatch of the gap goes on through them. */
function paintInsides(painting: Painting): void {
  const { art, frame, placed, window, dpr, inks, context } = painting;
  const merged = { counted: new Path2D(), aside: new Path2D() };
  for (let letter = window.from; letter <= window.to; letter += 1) {
    const matrix = matrixAt(frame, placed.letters[letter]!.x, dpr, art.pack.unitsPerEm / 1000);
    for (const kind of ['counted', 'aside'] as const) {
      const path = art.insides[letter]![kind];
      if (path) merged[kind].addPath(path, matrix);
    }
  }
  fill(painting, merged.counted, dots(context, inks.cool, dpr, grain(painting)));
  fill(painting, merged.aside, rings(context, inks.cool, dpr, grain(painting)));
}

/** CSS px of an em under which a hatch is too coarse to stand for the letters: white alone is solid there. */
const SOLID = 60;

/** Pitch of a texture in CSS px: finer on small lines. */
function grain(painting: Painting): number {
  const em = emOf(painting);
  return em >= 110 ? 7 : em >= 48 ? 5 : 3;
}

const emOf = ({ frame, art }: Painting): CssPx => frame.scale * art.pack.unitsPerEm;

/** The baseline lies under the letters that stand on it, the other lines over those that reach them: none hides in the letters. */
function paintGuides({ context, art, frame, dpr, inks }: Painting): void {
  const { vertical } = art.pack;
  const thick = Math.max(1, Math.round(dpr / 2));
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.fillStyle = inks.rule;
  for (const height of [vertical.ascenderTop, vertical.capHeight, vertical.xHeight, 0, vertical.descender]) {
    const y = Math.round(yOf(frame, height) * dpr);
    context.fillRect(0, height > 0 !== frame.flipY ? y - thick : y, frame.width * dpr, thick);
  }
}

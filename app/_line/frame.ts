import { prepareLine } from '@/shared/measure/prepared-line';
import { type PlacedLine, placeLetters, untouchedSpacing } from '@/shared/outline/place-letters';
import type { Pack } from '@/shared/schemas/pack';
import type { CssPx, FontUnits } from '@/shared/units';

/** The position of a line in its drawing. Lengths in CSS px unless noted. */
export type Frame = {
  readonly width: CssPx;
  readonly height: CssPx;
  /** CSS px per font unit. */
  readonly scale: number;
  /** The line's origin before turning or mirroring. */
  readonly originX: CssPx;
  readonly baselineY: CssPx;
  /** Left and right exchanged about `axisX`; top and bottom about the middle. */
  readonly flipX: boolean;
  readonly flipY: boolean;
  readonly axisX: CssPx;
};

export function isSameFrame(a: Frame, b: Frame): boolean {
  return (Object.keys(a) as (keyof Frame)[]).every((name) => a[name] === b[name]);
}

export function xOf(frame: Frame, units: FontUnits): CssPx {
  const x = frame.originX + units * frame.scale;
  return frame.flipX ? 2 * frame.axisX - x : x;
}

export function yOf(frame: Frame, units: FontUnits): CssPx {
  const y = frame.baselineY - units * frame.scale;
  return frame.flipY ? frame.height - y : y;
}

/** The position on the line under a point of the drawing, in font units from its origin. */
export function unitsAt(frame: Frame, x: CssPx): FontUnits {
  return ((frame.flipX ? 2 * frame.axisX - x : x) - frame.originX) / frame.scale;
}

/** The gap whose middle is nearest. */
export function nearestGap(placed: PlacedLine, at: FontUnits): number {
  let nearest = 0;
  for (const gap of placed.gaps) {
    if (Math.abs(gap.centre - at) < Math.abs((placed.gaps[nearest]?.centre ?? 0) - at)) nearest = gap.index;
  }
  return nearest;
}

/** The gap that a drag from here moves: the one before the letter; null off the line and on the first letter. */
export function heldGap(placed: PlacedLine, at: FontUnits, reach: FontUnits): number | null {
  const near = nearestGap(placed, at);
  const gap = placed.gaps[near];
  if (!gap) return null;
  if (Math.abs(gap.centre - at) <= Math.max(reach, Math.abs(gap.to - gap.from) / 2)) return near;
  const letter = placed.letters.find(({ x, advance }) => at >= x && at < x + advance);
  return letter && letter.index > 0 ? letter.index - 1 : null;
}

/**
 * Where the line's origin goes: with its ink at the margin when the line fits, otherwise so that `follow` is well in
 * view. `last` is reused as long as it still does, so that the line doesn't jump. `ink` and `follow` are font units
 * from the origin.
 */
export function originFor(
  view: { width: CssPx; margin: CssPx; scale: number },
  line: { ink: Span; follow: Span },
  last: CssPx | null,
): CssPx {
  const { width, margin, scale } = view;
  const start = margin - line.ink.from * scale;
  if (lineFits(view, line.ink)) return start;
  const clamp = (origin: CssPx) => Math.max(width - margin - line.ink.to * scale, Math.min(start, origin));
  const [from, to] = [line.follow.from * scale, line.follow.to * scale];
  // A gap goes in the middle half; a wider stretch half as far from the edges as it would be if centred.
  const edge = Math.max(0, Math.min(width, width - (to - from))) / 4;
  if (last !== null && last + from > edge && last + to < width - edge) return clamp(last);
  return clamp((width - from - to) / 2);
}

export function lineFits({ width, margin, scale }: { width: CssPx; margin: CssPx; scale: number }, ink: Span): boolean {
  return (ink.to - ink.from) * scale + 2 * margin <= width;
}

/** From the leftmost to the rightmost ink, in font units. */
export type Span = { readonly from: FontUnits; readonly to: FontUnits };

const known = new WeakMap<Pack, Map<number, Span>>();

/**
 * Where the ink of the letters `from`–`to` begins and ends on the line: a line is aligned by its ink, whatever the side
 * bearing of its first letter.
 */
export function inkEdges(pack: Pack, { letters }: PlacedLine, { from, to }: { from: number; to: number }): Span {
  const [first, last] = [letters[from]!, letters[to]!];
  return { from: first.x + inkOf(pack, first.glyph).from, to: last.x + inkOf(pack, last.glyph).to };
}

function inkOf(pack: Pack, glyph: number): Span {
  const cached = known.get(pack) ?? new Map<number, Span>();
  known.set(pack, cached);
  const found = cached.get(glyph) ?? spanOf(pack.glyphs[glyph]!);
  cached.set(glyph, found);
  return found;
}

/** From the points on the curve; faces have one at each extreme. A letter without ink spans its advance. */
function spanOf({ path, advance }: Pack['glyphs'][number]): Span {
  const xs = [...path.matchAll(/[MLQC]([^MLQCZ]*)/g)].map(([, numbers]) => Number(numbers!.split(' ').at(-2)));
  return xs.length === 0 ? { from: 0, to: advance } : { from: Math.min(...xs), to: Math.max(...xs) };
}

/** The nearest edge between two pixels of the screen: edges there have no grey seam. `dpr` is device px per CSS px. */
export function onGrid(place: CssPx, dpr: number): CssPx {
  return Math.round(place * dpr) / dpr;
}

/** A thickness in whole pixels of the screen, at least one. */
export function thickness(wanted: CssPx, dpr: number): CssPx {
  return Math.max(1, Math.round(wanted * dpr)) / dpr;
}

/** Where a bar of a thickness in whole pixels begins, so that its middle is as near to `middle` as pixels allow. */
export function barFrom(middle: CssPx, thick: CssPx, dpr: number): CssPx {
  return onGrid(middle - thick / 2, dpr);
}

/** Width of the line in the face's own spacing, in em: doesn't change while the line is being spaced. */
export function setWidthOf(pack: Pack): number {
  return placeLetters(pack, untouchedSpacing(pack)).width / pack.unitsPerEm;
}

type Reach = { readonly over: number; readonly under: number };
const reaches = new WeakMap<Pack, Reach>();

/** How far the letters of this line, accents included, reach above and below the baseline, in em. */
export function reachOf(pack: Pack): Reach {
  const worked = reaches.get(pack);
  if (worked) return worked;
  const { letters } = prepareLine(pack);
  const over = Math.max(pack.vertical.capHeight / pack.unitsPerEm, ...letters.map(({ box }) => box.top / 1000));
  const under = Math.max(0.05, ...letters.map(({ box }) => -box.bottom / 1000));
  const reach = { over: over + 0.02, under: under + 0.02 };
  reaches.set(pack, reach);
  return reach;
}

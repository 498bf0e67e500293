import { createHash } from 'node:crypto';
import opentype, { type Font, type Glyph, type PathCommand } from 'opentype.js';
import type { HarfBuzz } from './harfbuzz';
import { codePoint, FaceError } from './face-error';
import { checkComposite } from './file/composites';
import type { Tables } from './file/tables';
import { isSettable } from './shaping/split-line';

/**
 * What a second, independent reader found in a face. `letters` is how many were compared and agree;
 * `unchecked` says what could not be compared, and why.
 */
export type SecondReading = { letters: number; unchecked: string | null };

/** The key of a file's readings: SHA-256 of its original bytes, in hexadecimal. */
export const fileHash = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** Left, bottom, right, top of the drawn curve in font units; null where nothing is drawn. */
type Box = readonly [left: number, bottom: number, right: number, top: number] | null;

/** Two readers may round a curve's extreme to either side. */
const TOLERANCE = 1;

/**
 * Reads units per em, and the advance and outline box of every letter that can be set, with opentype.js beside
 * HarfBuzz, from the tables of one unpacked face at the usual values of its axes. It neither shapes nor kerns. Throws
 * FaceError `readers-disagree` with both figures where they differ by more than one unit. What opentype.js can't read
 * is listed in `unchecked` and refuses nothing: most such faces are sound.
 */
export function compareReaders(harfbuzz: typeof HarfBuzz, face: HarfBuzz.Face, tables: Tables): SecondReading {
  let second: Font;
  try {
    second = opentype.parse(bareSfnt(tables));
  } catch (error) {
    return { letters: 0, unchecked: `The second reader can't open this face (${reason(error)}).` };
  }
  agree(() => 'an em has', face.upem, second.unitsPerEm, 'units');
  const first = new harfbuzz.Font(face);
  let letters = 0;
  let unread: string | null = null;
  // A copy: the list is in the module's memory, which moves when it grows.
  for (const point of [...face.collectUnicodes()]) {
    const letter = String.fromCodePoint(point);
    if (!/\p{L}/u.test(letter) || !isSettable(letter)) continue;
    const glyph = first.nominalGlyph(point);
    if (glyph === undefined) continue;
    let advance: number, box: Box;
    try {
      // Parts that double at each step would keep the other reader busy for ever.
      checkComposite(tables, glyph, letter);
      const theirs = second.charToGlyph(letter);
      advance = theirs.advanceWidth;
      box = placed(theirs, secondBox(theirs.path.commands));
    } catch (error) {
      unread ??= `The second reader can't read ${named(point)} (${reason(error)}).`;
      continue;
    }
    agree(() => `the advance of ${named(point)} is`, first.glyphHAdvance(glyph), advance);
    agreeBox(point, firstBox(first.glyphToJson(glyph)), box);
    letters += 1;
  }
  return { letters, unchecked: unread };
}

/**
 * A TrueType outline is placed so that the left edge in its header is at the letter's left side bearing (OpenType
 * specification, `glyf` and `hmtx`). opentype.js reads both figures and doesn't move the outline.
 */
function placed({ xMin, leftSideBearing }: Glyph, box: Box): Box {
  if (box === null || xMin === undefined) return box;
  const shift = leftSideBearing - xMin;
  return [box[0] + shift, box[1], box[2] + shift, box[3]];
}

/** The box that a pen's way fills: of the curves themselves, control points that they do not reach left out. */
class PenBox {
  private left = Infinity;
  private bottom = Infinity;
  private right = -Infinity;
  private top = -Infinity;
  private x = 0;
  private y = 0;

  /** Goes to a point of the outline, in a straight line or by a curve with these control points. */
  to(x: number, y: number): void {
    if (x < this.left) this.left = x;
    if (x > this.right) this.right = x;
    if (y < this.bottom) this.bottom = y;
    if (y > this.top) this.top = y;
    this.x = x;
    this.y = y;
  }

  quadratic(x1: number, y1: number, x: number, y: number): void {
    const [fromX, fromY] = [this.x, this.y];
    this.to(x, y);
    // Most control points lie inside what was reached; only the others can push the curve out.
    if (x1 < this.left || x1 > this.right) this.reachX(quadraticExtreme(fromX, x1, x));
    if (y1 < this.bottom || y1 > this.top) this.reachY(quadraticExtreme(fromY, y1, y));
  }

  cubic(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
    const [fromX, fromY] = [this.x, this.y];
    this.to(x, y);
    if (Math.min(x1, x2) < this.left || Math.max(x1, x2) > this.right)
      for (const value of cubicExtremes(fromX, x1, x2, x)) this.reachX(value);
    if (Math.min(y1, y2) < this.bottom || Math.max(y1, y2) > this.top)
      for (const value of cubicExtremes(fromY, y1, y2, y)) this.reachY(value);
  }

  box(): Box {
    return this.left === Infinity ? null : [this.left, this.bottom, this.right, this.top];
  }

  private reachX(value: number): void {
    if (value < this.left) this.left = value;
    if (value > this.right) this.right = value;
  }

  private reachY(value: number): void {
    if (value < this.bottom) this.bottom = value;
    if (value > this.top) this.top = value;
  }
}

function firstBox(steps: readonly { type: string; values: number[] }[]): Box {
  const pen = new PenBox();
  for (const { type, values } of steps) {
    const [a, b, c, d, e, f] = values as [number, number, number, number, number, number];
    if (type === 'C') pen.cubic(a, b, c, d, e, f);
    else if (type === 'Q') pen.quadratic(a, b, c, d);
    else if (type !== 'Z') pen.to(a, b);
  }
  return pen.box();
}

function secondBox(steps: readonly PathCommand[]): Box {
  const pen = new PenBox();
  for (const step of steps) {
    if (step.type === 'C') pen.cubic(step.x1, step.y1, step.x2, step.y2, step.x, step.y);
    else if (step.type === 'Q') pen.quadratic(step.x1, step.y1, step.x, step.y);
    else if (step.type !== 'Z') pen.to(step.x, step.y);
  }
  return pen.box();
}

/** Where a quadratic Bézier curve turns round on one axis; its start where it does not. */
function quadraticExtreme(a: number, b: number, c: number): number {
  const t = (a - b) / (a - 2 * b + c);
  return t > 0 && t < 1 ? (1 - t) * (1 - t) * a + 2 * t * (1 - t) * b + t * t * c : a;
}

/** Where a cubic one turns round: at the zeros of its derivative. */
function cubicExtremes(a: number, b: number, c: number, d: number): number[] {
  const [square, linear, constant] = [d - 3 * c + 3 * b - a, 2 * (c - 2 * b + a), b - a];
  const root = Math.sqrt(linear * linear - 4 * square * constant);
  const times = square === 0 ? [-constant / linear] : [-1, 1].map((sign) => (-linear + sign * root) / (2 * square));
  return times
    .filter((t) => t > 0 && t < 1)
    .map((t) => (1 - t) ** 3 * a + 3 * t * (1 - t) ** 2 * b + 3 * t * t * (1 - t) * c + t ** 3 * d);
}

const SIDES = ['left', 'lower', 'right', 'upper'] as const;

function agreeBox(point: number, first: Box, second: Box): void {
  if (first === null && second === null) return;
  if (first === null || second === null)
    throw disagreement(`${named(point)} ${first === null ? 'is empty' : 'is drawn'}`, first ? 'is empty' : 'is drawn');
  SIDES.forEach((side, index) =>
    agree(() => `the ${side} edge of ${named(point)} is at`, first[index]!, second[index]!),
  );
}

function agree(what: () => string, first: number, second: number, unit = ''): void {
  // Written so that a figure that is not a number disagrees, too.
  if (Math.abs(first - second) <= TOLERANCE) return;
  throw disagreement(`${what()} ${figure(first)}${unit && ` ${unit}`}`, figure(second));
}

function disagreement(first: string, second: string): FaceError {
  return new FaceError(
    'readers-disagree',
    `Two readers of this face disagree: by one ${first}, by the other ${second}. A line set in it could not be trusted. Get a sound file from its source.`,
  );
}

const figure = (value: number): string => String(Math.round(value * 10) / 10);
const named = (point: number): string => `“${String.fromCodePoint(point)}” (${codePoint(String.fromCodePoint(point))})`;
const reason = (error: unknown): string => (error instanceof Error ? error.message : String(error)).slice(0, 200);

/** Tables that letters, advances and outlines are read from; what opentype.js knows of the others is not wanted. */
const READ = ['CFF ', 'CFF2', 'cmap', 'glyf', 'head', 'hhea', 'hmtx', 'loca', 'maxp'];

/** One face by itself, out of whatever it was packed or collected in, with an empty table of names. */
function bareSfnt(tables: Tables): ArrayBuffer {
  const parts = READ.flatMap((tag): [string, Uint8Array][] => {
    const table = tables.get(tag);
    return table ? [[tag, table]] : [];
  });
  // opentype.js does not do without these two; they hold no names here (\`post\` in version 3).
  parts.push(['name', new Uint8Array([0, 0, 0, 0, 0, 6])], ['post', new Uint8Array(32).fill(3, 1, 2)]);
  const start = 12 + 16 * parts.length;
  const bytes = new Uint8Array(parts.reduce((sum, [, table]) => sum + padded(table.byteLength), start));
  const view = new DataView(bytes.buffer);
  view.setUint32(0, tables.has('glyf') ? 0x00010000 : 0x4f54544f);
  view.setUint16(4, parts.length);
  let at = start;
  parts.forEach(([tag, table], index) => {
    const entry = 12 + 16 * index;
    for (let i = 0; i < 4; i++) view.setUint8(entry + i, tag.charCodeAt(i));
    view.setUint32(entry + 8, at);
    view.setUint32(entry + 12, table.byteLength);
    bytes.set(table, at);
    at += padded(table.byteLength);
  });
  return bytes.buffer;
}

const padded = (length: number): number => Math.ceil(length / 4) * 4;

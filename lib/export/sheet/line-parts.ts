import { lineShapes, type Piece, type Shape } from '@/shared/line/shapes';
import { parsePath } from '@/shared/outline/parse-path';
import { placeLetters, type PlacedLine } from '@/shared/outline/place-letters';
import type { DrawnLine } from '@/lib/release/released';
import { withUnit } from '@/shared/text/number';
import { pointsOf, tallest, type Columns } from './paper';
import type { OutlineCommand } from './page';

/** A piece of a line as it is drawn: lengths in points, x from its own left edge, y downward from its baseline. */
export type LinePart = {
  commands: OutlineCommand[];
  width: number;
  /** How far the outlines reach over the baseline and under it. */
  above: number;
  below: number;
  /** The gaps in it by index, each with the x of its middle; a gap at which the line was broken is at its end. */
  gaps: { index: number; x: number }[];
};

export type LineParts = {
  parts: LinePart[];
  /** Beside the line, in the margin; or under it, where the line needs the whole width. */
  notes: 'beside' | 'under';
  /** Points an em. */
  em: number;
  /** What was done to make it fit, in words; null when nothing was. */
  remark: string | null;
};

/**
 * The line at its true size, fitted to the page: whole if it can be, else broken at its word spaces, else, where a word
 * alone is wider than the paper, made smaller; never cut off.
 */
export function lineParts({ pack, spacing, size }: DrawnLine, columns: Columns): LineParts {
  const placed = placeLetters(pack, spacing);
  const letters = lettersOf(lineShapes({ pack, spacing }));
  const points = pointsOf(size);
  const scale = points / pack.unitsPerEm;
  const whole = columns.right - columns.left;
  const most = tallest * (columns.bottom - columns.top);
  const made = (stretches: Stretch[], by = scale) =>
    stretches.map((stretch) => partOf(pack, placed, letters, stretch, by));
  const fits = (parts: LinePart[], width: number) =>
    parts.every((part) => part.width <= width && part.above + part.below <= most);
  const line = made([{ first: 0, last: placed.letters.length - 1 }]);
  if (fits(line, columns.mainWidth)) return { parts: line, notes: 'beside', em: points, remark: null };
  if (fits(line, whole)) return { parts: line, notes: 'under', em: points, remark: null };
  for (const [notes, width] of [
    ['beside', columns.mainWidth],
    ['under', whole],
  ] as const) {
    const parts = made(broken(pack, placed, width / scale));
    if (fits(parts, width))
      return {
        parts,
        notes,
        em: points,
        remark: `Broken at ${parts.length === 2 ? 'a word space' : 'word spaces'}, since the line is ${withUnit((line[0]!.width / 72) * 25.4, 'mm')} wide and the paper is not.`,
      };
  }
  const words = made(broken(pack, placed, 0));
  const share =
    Math.floor(
      1000 * Math.min(...words.map((part) => Math.min(whole / part.width, most / (part.above + part.below)))),
    ) / 1000;
  const parts = made(broken(pack, placed, whole / (scale * share)), scale * share);
  return {
    parts,
    notes: 'under',
    em: points * share,
    remark: `Not at its true size: made smaller to ${withUnit(share * 100, '%', 1)}, since it is larger than the paper.`,
  };
}

/** From the first letter to the last on one line of the page. */
type Stretch = { first: number; last: number };

/** Stretches of whole words, each as long as it may be; a word wider than `width` font units is one by itself. */
function broken(pack: DrawnLine['pack'], placed: PlacedLine, width: number): Stretch[] {
  const end = (letter: number) => placed.letters[letter]!.x + placed.letters[letter]!.advance;
  const words: Stretch[] = [];
  placed.letters.forEach((_, index) => {
    if (index === 0 || (pack.wordSpace[index - 1] ?? 0) > 0) words.push({ first: index, last: index });
    else words.at(-1)!.last = index;
  });
  return words.reduce<Stretch[]>((pieces, word) => {
    const last = pieces.at(-1);
    if (last && end(word.last) - placed.letters[last.first]!.x <= width) last.last = word.last;
    else pieces.push({ ...word });
    return pieces;
  }, []);
}

function partOf(
  pack: DrawnLine['pack'],
  placed: PlacedLine,
  drawnLetters: readonly OutlineCommand[][],
  { first, last }: Stretch,
  scale: number,
): LinePart {
  const letters = placed.letters.slice(first, last + 1);
  const drawn = drawnLetters.slice(first, last + 1).flat();
  const across = drawn.flatMap(({ numbers }) => numbers.filter((_, index) => index % 2 === 0));
  const heights = drawn.flatMap(({ numbers }) => numbers.filter((_, index) => index % 2 === 1));
  const advanceEnd = letters.at(-1)!.x + letters.at(-1)!.advance;
  // Ink may reach over the advance on either side; the piece is as wide as both.
  const from = least(letters[0]!.x, across);
  const to = -least(
    -advanceEnd,
    across.map((x) => -x),
  );
  const isLast = last === placed.letters.length - 1;
  return {
    commands: drawn.map(({ letter, numbers }) => ({
      letter,
      numbers: numbers.map((number, index) => (index % 2 === 0 ? (number - from) * scale : -number * scale)),
    })),
    width: (to - from) * scale,
    above:
      Math.max(
        pack.vertical.capHeight,
        -least(
          0,
          heights.map((y) => -y),
        ),
      ) * scale,
    below: -least(0, heights) * scale,
    gaps: placed.gaps
      .slice(first, isLast ? last : last + 1)
      .map(({ index, centre }) => ({ index, x: index === last ? (to - from) * scale + 4 : (centre - from) * scale })),
  };
}

const least = (start: number, numbers: readonly number[]): number =>
  numbers.reduce((low, number) => (number < low ? number : low), start);

/** The commands of each letter of the line at its place, font units, y up: what canvas and SVG draw too. */
function lettersOf(shapes: readonly Shape[]): OutlineCommand[][] {
  return shapes.flatMap((shape) =>
    shape.kind === 'path' && shape.role === 'letters' ? shape.pieces.map(brought) : [],
  );
}

function brought({ outline, place: { dx, dy, turn } }: Piece): OutlineCommand[] {
  if (!('path' in outline)) throw new TypeError('A letter is drawn by its path.');
  const [cos, sin] = turn === 0 ? [1, 0] : [Math.cos((turn * Math.PI) / 1800), Math.sin((turn * Math.PI) / 1800)];
  return parsePath(outline.path).map(({ letter, numbers }) => ({
    letter,
    numbers: numbers.map((value, index) =>
      index % 2 === 0 ? value * cos - numbers[index + 1]! * sin + dx : numbers[index - 1]! * sin + value * cos + dy,
    ),
  }));
}

import { useId } from 'react';
import type { Pack } from '@/shared/schemas/pack';
import type { Size, Spacing } from '@/shared/schemas/spacing';
import { mergedPath, placeLetters, type PlacedLine } from '@/shared/outline/place-letters';
import { classes } from './classes';
import { LineMarks, type GapMark } from './LineMarks';
import { LineTies, type GapTie } from './LineTies';
import { number } from './svg-number';

export type { GapMark } from './LineMarks';
export type { GapTie } from './LineTies';

type Props = {
  pack: Pack;
  spacing: Spacing;
  /** What a reader who cannot see it is told; the line's text when left out. `null` hides a drawing that words beside it repeat. */
  label?: string | null;
  /** Sets the line at its true size (1 em = size); else it fills its column. */
  size?: Size;
  /** A second setting as thin outlines under the letters. */
  under?: Spacing;
  /** Wedges below the baseline: points in = too tight, points out = too loose. */
  marks?: GapMark[];
  /** Hairlines from a gap or a run of gaps to the lower edge, where the note's number stands. */
  ties?: GapTie[];
  baseline?: boolean;
  /** Width in font units that the frame has at least, so that several lines in one column keep one scale. */
  room?: number;
  /** Ways of looking, as on the bench. */
  show?: Showing;
  /** Anything else in font units, y down, baseline at 0 (e.g. white made visible). Drawn under the letters. */
  behind?: React.ReactNode;
};

/** A line as outlines: one merged path, drawn on the server, no font needed in the browser. */
export function LineDrawing({
  pack,
  spacing,
  label,
  size,
  under,
  marks = [],
  ties = [],
  baseline,
  room = 0,
  show = {},
  behind,
}: Props) {
  const blurId = useId().replaceAll(/[^\w-]/g, '');
  const line = placeLetters(pack, spacing);
  const frame = frameOf(pack, line, ties.length > 0, marks.length > 0, room);
  const turned = turnedBy(show, frame, pack);
  const beside = turned.flipped
    ? { ...line, gaps: line.gaps.map((gap) => ({ ...gap, centre: 2 * turned.x - gap.centre })) }
    : line;
  const words = label === undefined ? pack.text : label;
  return (
    <svg
      className={classes('line-drawing', size && 'line-true')}
      viewBox={`${number(frame.x)} ${number(frame.y)} ${number(frame.width)} ${number(frame.height)}`}
      {...(size ? trueSize(frame, pack.unitsPerEm, size) : {})}
      {...(words === null ? { 'aria-hidden': true } : { role: 'img', 'aria-label': words })}
    >
      {show.blur && (
        <defs>
          <filter id={blurId}>
            <feGaussianBlur stdDeviation={number(0.028 * pack.unitsPerEm)} />
          </filter>
        </defs>
      )}
      <g transform={turned.transform}>
        {baseline && <path className="baseline" d={`M${number(frame.x)} 0H${number(frame.x + frame.width)}`} />}
        {show.guides && (
          <path
            className="baseline"
            d={guides(pack)
              .map((y) => `M${number(frame.x)} ${number(-y)}H${number(frame.x + frame.width)}`)
              .join('')}
          />
        )}
        {behind}
        {under && (
          <path
            className="under"
            transform="scale(1 -1)"
            d={mergedPath(pack, opened(placeLetters(pack, under), show))}
          />
        )}
        {!show.hidden && (
          <path
            className="letters"
            transform="scale(1 -1)"
            filter={show.blur ? `url(#${blurId})` : undefined}
            d={mergedPath(pack, opened(line, show))}
          />
        )}
      </g>
      {marks.length > 0 && <LineMarks pack={pack} line={beside} marks={marks} />}
      {ties.length > 0 && <LineTies pack={pack} line={beside} ties={ties} bottom={frame.y + frame.height} />}
    </svg>
  );
}

/** Ways of looking at a drawing. `open` are the letters that are not covered. */
export type Showing = {
  hidden?: boolean;
  blur?: boolean;
  head?: boolean;
  mirror?: boolean;
  guides?: boolean;
  open?: { from: number; to: number };
};

const opened = (line: PlacedLine, { open }: Showing): PlacedLine =>
  open ? { ...line, letters: line.letters.slice(open.from, open.to + 1) } : line;

const guides = ({ vertical }: Pack): number[] => [
  vertical.ascenderTop,
  vertical.capHeight,
  vertical.xHeight,
  0,
  vertical.descender,
];

/** On its head is half a turn about the middle of the letters, mirrored is left for right. */
function turnedBy(
  { head, mirror }: Showing,
  frame: Frame,
  pack: Pack,
): { transform?: string; flipped: boolean; x: number } {
  const x = frame.x + frame.width / 2;
  if (!head && !mirror) return { flipped: false, x };
  const y = (frame.y + Math.max(-pack.vertical.descender, 0.24 * pack.unitsPerEm)) / 2;
  const flipped = Boolean(head) !== Boolean(mirror);
  return {
    transform: `translate(${number(x)} ${number(y)}) scale(${flipped ? -1 : 1} ${head ? -1 : 1}) translate(${number(-x)} ${number(-y)})`,
    flipped,
    x,
  };
}

type Frame = { x: number; y: number; width: number; height: number };

/** Room for ascenders and descenders, a little on both sides for what overhangs, and more below for marks and ties. */
function frameOf(pack: Pack, line: PlacedLine, hasTies: boolean, hasMarks: boolean, room: number): Frame {
  const em = pack.unitsPerEm;
  const top = Math.max(pack.vertical.ascender, pack.vertical.ascenderTop, pack.vertical.capHeight);
  const below = Math.max(-pack.vertical.descender, 0.24 * em) + (hasMarks ? 0.16 * em : 0) + (hasTies ? 0.3 * em : 0);
  const side = 0.04 * em;
  return { x: -side, y: -top, width: Math.max(line.width, room) + 2 * side, height: top + below };
}

function trueSize(frame: Frame, unitsPerEm: number, size: Size) {
  const scaled = (units: number) => `${number((units / unitsPerEm) * size.value)}${size.unit}`;
  return { width: scaled(frame.width), height: scaled(frame.height) };
}

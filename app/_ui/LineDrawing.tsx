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
  /** Anything else in font units, y down, baseline at 0 (e.g. white made visible). Drawn under the letters. */
  behind?: React.ReactNode;
};

/** A line as outlines: one merged path, drawn on the server, no font needed in the browser. */
export function LineDrawing({ pack, spacing, label, size, under, marks = [], ties = [], baseline, room = 0, behind }: Props) {
  const line = placeLetters(pack, spacing);
  const frame = frameOf(pack, line, ties.length > 0, marks.length > 0, room);
  const words = label === undefined ? pack.text : label;
  return (
    <svg
      className={classes('line-drawing', size && 'line-true')}
      viewBox={`${number(frame.x)} ${number(frame.y)} ${number(frame.width)} ${number(frame.height)}`}
      {...(size ? trueSize(frame, pack.unitsPerEm, size) : {})}
      {...(words === null ? { 'aria-hidden': true } : { role: 'img', 'aria-label': words })}
    >
      {baseline && <path className="baseline" d={`M${number(frame.x)} 0H${number(frame.x + frame.width)}`} />}
      {behind}
      {under && <path className="under" transform="scale(1 -1)" d={mergedPath(pack, placeLetters(pack, under))} />}
      <path className="letters" transform="scale(1 -1)" d={mergedPath(pack, line)} />
      {marks.length > 0 && <LineMarks pack={pack} line={line} marks={marks} />}
      {ties.length > 0 && <LineTies pack={pack} line={line} ties={ties} bottom={frame.y + frame.height} />}
    </svg>
  );
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

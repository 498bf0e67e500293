import { useId } from 'react';
import { mergedPath, type PlacedLine, placeLetters } from '@/shared/outline/place-letters';
import type { Pack } from '@/shared/schemas/pack';
import type { Size, Spacing } from '@/shared/schemas/spacing';
import { classes } from '../_ui/classes';
import { number } from '../_ui/svg-number';

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

/** How a gap looks beside the others. `strength` 1 is slight, 2 clear, 3 strong. */
export type GapMark = { gap: number; look: 'tight' | 'loose'; strength: 1 | 2 | 3 };

/** A pair of wedges under a gap: their points meet where it is too tight and turn away where it is too loose. */
function LineMarks({ pack, line, marks }: { pack: Pack; line: PlacedLine; marks: GapMark[] }) {
  const em = pack.unitsPerEm;
  const y = Math.max(-pack.vertical.descender, 0.24 * em) + 0.05 * em;
  return (
    <path
      className="mark"
      d={marks
        .map((mark) => wedges(line.gaps[mark.gap]!.centre, y, (0.03 + 0.02 * mark.strength) * em, mark.look))
        .join('')}
    />
  );
}

function wedges(x: number, y: number, size: number, look: GapMark['look']): string {
  const apart = size * 0.25;
  // From the gap's middle outwards: the point first when the letters press in, the back first when they stand apart.
  const [point, back] = look === 'tight' ? [apart, apart + size] : [apart + size, apart];
  return [-1, 1]
    .map(
      (side) =>
        `M${number(x + side * point)} ${number(y)}L${number(x + side * back)} ${number(y - size * 0.7)}V${number(y + size * 0.7)}Z`,
    )
    .join('');
}

/** A note's place: one gap (`from` = `to`) or a run of gaps, and the sign that stands at the end of the hairline. */
export type GapTie = { from: number; to: number; sign: string };

/** Hairlines from gaps to the lower edge of the sheet, a bracket where a note speaks of a run. */
function LineTies({ pack, line, ties, bottom }: { pack: Pack; line: PlacedLine; ties: GapTie[]; bottom: number }) {
  const em = pack.unitsPerEm;
  const top = 0.05 * em;
  const signSize = 0.17 * em;
  return (
    <g>
      {ties.map((tie, index) => {
        const left = line.gaps[tie.from]!.centre;
        const right = line.gaps[tie.to]!.centre;
        const middle = (left + right) / 2;
        const bracket =
          tie.from === tie.to
            ? ''
            : `M${number(left)} ${number(top)}V${number(top + 0.04 * em)}H${number(right)}V${number(top)}`;
        return (
          <g key={`${tie.from}-${tie.to}-${index}`}>
            <path
              className="tie"
              d={`${bracket}M${number(middle)} ${number(bracket ? top + 0.04 * em : top)}V${number(bottom - signSize * 1.15)}`}
            />
            <text
              className="tie-sign"
              x={number(middle)}
              y={number(bottom - signSize * 0.15)}
              fontSize={number(signSize)}
              textAnchor="middle"
            >
              {tie.sign}
            </text>
          </g>
        );
      })}
    </g>
  );
}

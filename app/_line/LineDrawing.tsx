import { createElement, type ReactNode, useId } from 'react';
import { flipsOf, type Looks, noLooks } from '@/shared/line/looks';
import { type GapMark, type GapTie, type Ink, lineShapes, type Shape, type Texture } from '@/shared/line/shapes';
import { type PlacedLine, placeLetters } from '@/shared/outline/place-letters';
import type { Pack } from '@/shared/schemas/pack';
import type { Size, Spacing } from '@/shared/schemas/spacing';
import type { CssPx, FontUnits } from '@/shared/units';
import { classes } from '../_ui/classes';
import { BLUR } from './brush';
import { svgElements, svgInks, type SvgPage } from './painters';
import { pitchFor, tiles } from './textures';

type Props = {
  pack: Pack;
  spacing: Spacing;
  /**
   * What a screen reader says for the drawing; the line's text by default. `null` hides a drawing that repeats the
   * words beside it.
   */
  label?: string | null;
  /** Sets the line at its true size (1 em = size); without it the line fills its column. */
  size?: Size;
  /** A second spacing as thin outlines under the letters. */
  under?: Spacing;
  /** Wedges below the baseline: points in = too tight, points out = too wide. */
  marks?: readonly GapMark[];
  /** Hairlines from a gap or a run of gaps to the lower edge, where the note's number is. */
  ties?: readonly GapTie[];
  baseline?: boolean;
  /** Least width of the frame in font units, so that several lines in one column share one scale. */
  room?: FontUnits;
  /** Ways of looking, combined; some depend on the chosen gap. */
  looks?: Partial<Looks>;
  chosen?: number | null;
  /** Anything else in font units, y down, baseline at 0, drawn under the letters: targets for pointing. */
  behind?: ReactNode;
};

/** A line as SVG, drawn from the list of shapes: also on the server, and without a font in the browser. */
export function LineDrawing({ pack, spacing, label, size, room = 0, behind, ...options }: Props) {
  const id = useId().replaceAll(/[^\w-]/g, '');
  const { under, marks = [], ties = [], baseline = false, chosen = null } = options;
  const looks = { ...noLooks, ...options.looks };
  const frame = frameOf(pack, placeLetters(pack, spacing), ties.length > 0, marks.length > 0, room);
  const bottom = frame.y + frame.height;
  const shapes = lineShapes({
    ...{ pack, spacing, looks, chosen, marks, ties, baseline, foot: -bottom },
    overlays: under ? [{ spacing: under }] : [],
  });
  const turn = turnOf(looks, frame, pack);
  const em = size ? size.value * (size.unit === 'pt' ? 96 / 72 : 1) : NOMINAL_EM;
  const page: SvgPage = {
    from: frame.x,
    to: frame.x + frame.width,
    em,
    texture: (paint, ink) => `url(#${id}-${paint}-${ink})`,
  };
  const upright = shapes.filter((shape) => shape.upright).map((shape) => (turn.x < 0 ? mirrored(shape, turn) : shape));
  const turned = shapes.filter((shape) => !shape.upright);
  const words = label === undefined ? pack.text : label;
  return (
    <svg
      className={classes('line-drawing', size && 'line-true')}
      viewBox={[frame.x, frame.y, frame.width, frame.height].map(twoDecimals).join(' ')}
      {...(size ? trueSize(frame, pack.unitsPerEm, size) : {})}
      {...(words === null ? { 'aria-hidden': true } : { role: 'img', 'aria-label': words })}
    >
      <Definitions {...{ id, shapes, frame, turn, em, unitsPerEm: pack.unitsPerEm, blur: looks.blur }} />
      {behind && <g transform={matrix([turn.x, 0, 0, -turn.y, turn.dx, turn.dy])}>{behind}</g>}
      <g className="shapes" filter={looks.blur ? `url(#${id}-blur)` : undefined}>
        <Drawn page={page} turn={turn} shapes={turned.filter((shape) => !shape.sharp)} />
      </g>
      <g className="shapes">
        <Drawn page={page} turn={turn} shapes={turned.filter((shape) => shape.sharp)} />
        <Drawn page={page} turn={{ x: 1, y: -1, dx: 0, dy: 0 }} shapes={upright} />
      </g>
    </svg>
  );
}

function Drawn({ page, turn: { x, y, dx, dy }, shapes }: { page: SvgPage; turn: Turn; shapes: readonly Shape[] }) {
  if (shapes.length === 0) return null;
  return (
    <g transform={matrix([x, 0, 0, y, dx, dy])}>
      {svgElements(page, shapes).map(({ tag, attributes, text }, index) =>
        createElement(tag, { key: index, ...attributes }, text),
      )}
    </g>
  );
}

type Frame = { x: number; y: number; width: number; height: number };

/** Room for ascenders and descenders, a little on both sides for overhangs, and more below for marks and ties. */
function frameOf(pack: Pack, line: PlacedLine, hasTies: boolean, hasMarks: boolean, room: FontUnits): Frame {
  const em = pack.unitsPerEm;
  const top = Math.max(pack.vertical.ascender, pack.vertical.ascenderTop, pack.vertical.capHeight);
  const below = Math.max(-pack.vertical.descender, 0.24 * em) + (hasMarks ? 0.16 * em : 0) + (hasTies ? 0.3 * em : 0);
  const side = 0.04 * em;
  return { x: -side, y: -top, width: Math.max(line.width, room) + 2 * side, height: top + below };
}

/** From the shapes' y up to the drawing's y down: `x` and `y` are 1 or −1. */
type Turn = { x: number; y: number; dx: number; dy: number };

/** Upside down is half a turn about the middle of the letters; mirrored exchanges left and right. */
function turnOf(looks: Looks, frame: Frame, pack: Pack): Turn {
  const { flipX, flipY } = flipsOf(looks);
  const middle = frame.y + Math.max(-pack.vertical.descender, 0.24 * pack.unitsPerEm);
  return {
    x: flipX ? -1 : 1,
    y: flipY ? 1 : -1,
    dx: flipX ? 2 * frame.x + frame.width : 0,
    dy: flipY ? middle : 0,
  };
}

/** A shape that stays upright, at its position on the turned line. */
function mirrored(shape: Shape, { dx }: Turn): Shape {
  if (shape.kind === 'rules') return shape;
  if (shape.kind === 'sign') return { ...shape, place: { ...shape.place, dx: dx - shape.place.dx } };
  return {
    ...shape,
    pieces: shape.pieces.map((piece) => ({ ...piece, place: { ...piece.place, dx: dx - piece.place.dx } })),
  };
}

/** The em of a drawing that fills its column is unknown; textures are made as for one of this many CSS px. */
const NOMINAL_EM: CssPx = 100;

type DefinitionsProps = {
  id: string;
  shapes: readonly Shape[];
  frame: Frame;
  turn: Turn;
  em: CssPx;
  unitsPerEm: number;
  blur: boolean;
};

/**
 * The textures of these shapes, anchored to the sheet's upper left corner and not turned with the line, and the blur.
 */
function Definitions({ id, shapes, frame, turn, em, unitsPerEm, blur }: DefinitionsProps) {
  const textured = new Map<string, { texture: Texture; ink: Ink }>();
  for (const { paint, ink } of shapes)
    if (paint in tiles) textured.set(`${paint}-${ink}`, { texture: paint as Texture, ink });
  if (textured.size === 0 && !blur) return null;
  const unit = unitsPerEm / em;
  const spread = BLUR * unitsPerEm;
  return (
    <defs>
      {[...textured].map(([name, { texture, ink }]) => {
        const { size, path, line } = tiles[texture](pitchFor(em));
        const colour = svgInks[ink];
        return (
          <pattern
            key={name}
            id={`${id}-${name}`}
            width={size}
            height={size}
            patternUnits="userSpaceOnUse"
            patternTransform={matrix([
              turn.x * unit,
              0,
              0,
              turn.y * unit,
              turn.x * (frame.x - turn.dx),
              turn.y * (frame.y - turn.dy),
            ])}
          >
            {line === null ? (
              <path d={path} fill={colour} />
            ) : (
              <path d={path} fill="none" stroke={colour} strokeWidth={line} />
            )}
          </pattern>
        );
      })}
      {blur && (
        // Filters of elements blur in sRGB, as the canvas does.
        <filter
          id={`${id}-blur`}
          colorInterpolationFilters="sRGB"
          filterUnits="userSpaceOnUse"
          x={twoDecimals(frame.x - 3 * spread)}
          y={twoDecimals(frame.y - 3 * spread)}
          width={twoDecimals(frame.width + 6 * spread)}
          height={twoDecimals(frame.height + 6 * spread)}
        >
          <feGaussianBlur stdDeviation={twoDecimals(spread)} />
        </filter>
      )}
    </defs>
  );
}

const matrix = (values: readonly number[]): string =>
  `matrix(${values.map((value) => Math.round(value * 1e4) / 1e4).join(' ')})`;

function trueSize(frame: Frame, unitsPerEm: number, size: Size) {
  const scaled = (units: number) => `${twoDecimals((units / unitsPerEm) * size.value)}${size.unit}`;
  return { width: scaled(frame.width), height: scaled(frame.height) };
}

/** A coordinate with at most two decimals, without a trailing zero. */
function twoDecimals(value: number): string {
  return String(Math.round(value * 100) / 100);
}

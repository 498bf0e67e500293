import {
  pathTexts,
  type Ink,
  type Paint,
  type PathShape,
  type RuleShape,
  type Shape,
  type SignShape,
} from '@/shared/line/shapes';
import type { CssPx, FontUnits } from '@/shared/units';
import { barFrom, thickness, xOf, yOf } from './frame';
import { type Brush, hundredths, matrixOf, outlinePath, pathOnSheet, patternOf } from './brush';
import { SOLID_UNDER } from './textures';

/** Paints a line's shapes on a canvas, in their order. Blur comes from the canvas's own style. */
export function paintShapes(brush: Brush, shapes: readonly Shape[]): void {
  for (const shape of shapes) painterOf(shape).canvas(brush, shape);
}

/** A line's shapes as elements of an SVG, in their order. */
export function svgElements(page: SvgPage, shapes: readonly Shape[]): SvgElement[] {
  return shapes.flatMap((shape) => painterOf(shape).svg(page, shape));
}

/** The painter of a shape: the entry of the record below for its paint. */
const painterOf = (shape: Shape): Painter<Shape> => painters[shape.paint] as Painter<Shape>;

/** An SVG element as plain data: nothing here needs React, so that the painter's thread works without it. */
export type SvgElement = {
  readonly tag: 'path' | 'text';
  readonly attributes: Readonly<Record<string, string | number | undefined>>;
  readonly text?: string;
};

/** What an SVG painter knows about its drawing; y up, as in the shapes. */
export type SvgPage = {
  /** Left and right edge, font units. */
  readonly from: FontUnits;
  readonly to: FontUnits;
  /** The assumed em on the screen. */
  readonly em: CssPx;
  /** Reference to the texture in this ink in the drawing's definitions. */
  readonly texture: (paint: Paint, ink: Ink) => string;
};

type ShapeOf<P extends Paint> = P extends 'rules' ? RuleShape : P extends 'sign' ? SignShape : PathShape;
type Painter<S> = {
  readonly canvas: (brush: Brush, shape: S) => void;
  readonly svg: (page: SvgPage, shape: S) => SvgElement[];
};

/** Every kind of paint for canvas and for SVG: one without the other does not compile. */
const painters: { readonly [P in Paint]: Painter<ShapeOf<P>> } = {
  fill: {
    // A path for each letter at its position: the browser caches the path from frame to frame.
    canvas(brush, shape) {
      brush.context.fillStyle = brush.inks[shape.ink];
      for (const { outline, place } of shape.pieces) {
        brush.context.setTransform(...matrixOf(brush, place, outline.unit, shape.upright));
        brush.context.fill(outlinePath(outline));
      }
    },
    svg: (_, shape) => pathElements(shape, { fill: svgInks[shape.ink] }),
  },
  stroke: {
    canvas(brush, shape) {
      const { context, frame } = brush;
      context.strokeStyle = brush.inks[shape.ink];
      context.lineJoin = 'round';
      for (const { outline, place } of shape.pieces) {
        const scale = frame.scale * outline.unit;
        context.setTransform(...matrixOf(brush, place, outline.unit, shape.upright));
        context.lineWidth = (shape.width ?? 1) / scale;
        context.setLineDash(shape.dashed ? DASH.map((length) => length / scale) : []);
        context.stroke(outlinePath(outline));
      }
      context.setLineDash([]);
    },
    svg: (_, shape) =>
      pathElements(shape, {
        fill: 'none',
        stroke: svgInks[shape.ink],
        strokeWidth: shape.width ?? 1,
        strokeLinejoin: 'round',
        strokeDasharray: shape.dashed ? DASH.join(' ') : undefined,
        vectorEffect: 'non-scaling-stroke',
      }),
  },
  hatch: textured(),
  dots: textured(),
  rings: textured(),
  rules: {
    // Whole rows of pixels. A guide at the baseline is drawn under the letters, and the others over the letters that
    // reach them, so that none is hidden.
    canvas({ context, frame, dpr, inks }, shape) {
      context.setTransform(dpr, 0, 0, dpr, 0, 0);
      context.fillStyle = inks[shape.ink];
      for (const { height, span } of shape.rules) {
        const y = yOf(frame, height);
        if (span) {
          const thick = thickness(1, dpr);
          const [from, to] = [xOf(frame, span.from), xOf(frame, span.to)];
          context.fillRect(Math.min(from, to), barFrom(y, thick, dpr), Math.abs(to - from), thick);
        } else {
          const thick = Math.max(1, Math.round(dpr / 2)) / dpr;
          const edge = Math.round(y * dpr) / dpr;
          context.fillRect(0, height > 0 !== frame.flipY ? edge - thick : edge, frame.width, thick);
        }
      }
    },
    svg: ({ from, to }, shape) => [
      {
        tag: 'path',
        attributes: {
          className: shape.role,
          d: shape.rules
            .map(({ height, span }) => {
              const [left, right] = span ? [span.from, span.to] : [from, to];
              return `M${hundredths(left)} ${hundredths(height)}H${hundredths(right)}`;
            })
            .join(''),
          fill: 'none',
          stroke: svgInks[shape.ink],
          strokeWidth: 1,
          vectorEffect: 'non-scaling-stroke',
          shapeRendering: 'crispEdges',
        },
      },
    ],
  },
  sign: {
    canvas(brush, { ink, text, size, place }) {
      const { context, frame, dpr, inks } = brush;
      context.setTransform(dpr, 0, 0, dpr, 0, 0);
      context.fillStyle = inks[ink];
      context.font = `600 ${size * frame.scale}px sans-serif`;
      context.textAlign = 'center';
      context.fillText(text, xOf(frame, place.dx), frame.baselineY - place.dy * frame.scale);
    },
    svg: (_, { role, ink, text, size, place }) => [
      {
        tag: 'text',
        text,
        attributes: {
          className: role,
          x: hundredths(place.dx),
          y: hundredths(-place.dy),
          // The drawing's y points up; text must not be flipped.
          transform: 'scale(1 -1)',
          fontSize: hundredths(size),
          textAnchor: 'middle',
          fill: svgInks[ink],
        },
      },
    ],
  },
};

/** Dash and space of a dashed outline, CSS px. */
const DASH = [8, 5];

/**
 * All pieces as one path under a texture anchored to the sheet and not to the letters, so that its grain is the same at
 * any size.
 */
function textured(): Painter<PathShape> {
  return {
    canvas(brush, shape) {
      const { context, inks, em } = brush;
      context.setTransform(1, 0, 0, 1, 0, 0);
      context.fillStyle =
        shape.alone && em < SOLID_UNDER ? inks[shape.ink] : patternOf(brush, shape.paint, inks[shape.ink]);
      context.fill(pathOnSheet(brush, shape));
    },
    svg: (page, shape) =>
      pathElements(shape, {
        fill: shape.alone && page.em < SOLID_UNDER ? svgInks[shape.ink] : page.texture(shape.paint, shape.ink),
      }),
  };
}

/** Inks of the sheet in SVG; outside a sheet those of the page. */
export const svgInks: Record<Ink, string> = {
  ink: 'currentColor',
  rule: 'var(--sheet-rule, var(--rule))',
  warm: 'var(--sheet-warm, var(--warm-white))',
  cool: 'var(--sheet-cool, var(--cool-white))',
  mark: 'var(--sheet-mark, var(--warning))',
  note: 'var(--sheet-note, var(--accent))',
};

function pathElements({ role, pieces }: PathShape, paint: SvgElement['attributes']): SvgElement[] {
  return pathTexts(pieces).map(({ path, place }) => ({
    tag: 'path',
    attributes: {
      className: role,
      d: path,
      ...(place && {
        transform: `translate(${hundredths(place.dx)} ${hundredths(place.dy)}) rotate(${place.turn / 10})`,
      }),
      ...paint,
    },
  }));
}

import { pairProfiles } from '@/shared/measure/drawing';
import { prepareLine } from '@/shared/measure/prepared-line';
import { placeLetters, shiftedPath, type PlacedLetter, type PlacedLine } from '@/shared/outline/place-letters';
import type { Pack } from '@/shared/schemas/pack';
import type { CssPx, FontUnits, PerMille } from '@/shared/units';
import { noLooks, openLetters, type LookName, type Looks, type OpenLetters } from './looks';
import { type Outline, whiteBetween, whiteInside } from './white';

/**
 * One line as a list of shapes, in the order they are painted: plain data that canvas, SVG, wall, print and PDF all
 * draw. Everything is in font units from the line's origin, y up, unless noted.
 */
export type Shape = PathShape | RuleShape | SignShape;

/** Outlines that are filled, drawn round or textured, all alike. */
export type PathShape = Common & {
  readonly kind: 'path';
  readonly paint: 'fill' | 'stroke' | Texture;
  /** Thickness of a stroke. */
  readonly width?: CssPx;
  readonly dashed?: boolean;
  /**
   * Nothing else of the line is visible: solid where it is so small that a texture would be too coarse to show the
   * letters.
   */
  readonly alone?: boolean;
  readonly pieces: readonly Piece[];
};

/** Level lines at heights over the baseline; from edge to edge of the drawing where `span` is null. */
export type RuleShape = Common & {
  readonly kind: 'rules';
  readonly paint: 'rules';
  readonly rules: readonly { readonly height: FontUnits; readonly span: Span | null }[];
};

/** A word or number over `place`, in the middle of it. */
export type SignShape = Common & {
  readonly kind: 'sign';
  readonly paint: 'sign';
  readonly text: string;
  readonly size: FontUnits;
  readonly place: Place;
};

type Common = {
  /** What it is, for styles and tests. */
  readonly role: Role;
  readonly ink: Ink;
  /** Stays sharp on a blurred line. */
  readonly sharp?: boolean;
  /** Goes where the line goes when it is turned over, and stays upright itself, under the line. */
  readonly upright?: boolean;
};

export type Role =
  | 'letters'
  | 'overlay'
  | 'between'
  | 'inside'
  | 'inside-open'
  | 'guides'
  | 'baseline'
  | 'across'
  | 'edge-drawn'
  | 'edge-seen'
  | 'mark'
  | 'tie'
  | 'tie-sign';

/** White made visible: diagonal lines between letters, dots inside them, rings where a letter is open to one side. */
export type Texture = 'hatch' | 'dots' | 'rings';
export type Paint = Shape['paint'];
/** Colours of the sheet by what they are for; each ground has its own. */
export type Ink = 'ink' | 'rule' | 'warm' | 'cool' | 'mark' | 'note';
type Span = { readonly from: FontUnits; readonly to: FontUnits };

export type Piece = { readonly outline: Outline; readonly place: Place };

/**
 * Where an outline goes: moved by dx and dy (font units) and turned about its own origin (tenths of a degree, against
 * the clock).
 */
export type Place = { readonly dx: FontUnits; readonly dy: FontUnits; readonly turn: number };

/** What is drawn of a line: its spacing, the ways of looking, and its overlay. */
export type LineToDraw = {
  readonly pack: Pack;
  readonly spacing: Amounts;
  readonly looks?: Partial<Looks>;
  /** The first gap of what is chosen, which some looks go by; null = none. */
  readonly chosen?: number | null;
  /** Letters that are not covered, where that is not left to the looks. */
  readonly open?: OpenLetters;
  readonly baseline?: boolean;
  readonly overlays?: readonly Overlay[];
  readonly marks?: readonly GapMark[];
  readonly ties?: readonly GapTie[];
  /** How far under the baseline the drawing ends (font units, below 0): where ties end. */
  readonly foot?: FontUnits;
};

type Amounts = { readonly tracking: PerMille; readonly offsets: readonly PerMille[] };

/**
 * Another spacing of the line as outlines, under the letters or over them; the letter `heldAt` is in the same place in
 * both.
 */
type Overlay = {
  readonly spacing: Amounts;
  readonly ink?: Ink;
  readonly dashed?: boolean;
  readonly over?: boolean;
  readonly heldAt?: number;
};

/** How a gap looks beside the others. `strength` 1 is slight, 2 clear, 3 strong. */
export type GapMark = { readonly gap: number; readonly fault: 'tight' | 'wide'; readonly strength: 1 | 2 | 3 };

/** A note's place: one gap (`from` = `to`) or a run of gaps, and the sign at the end of the hairline. */
export type GapTie = { readonly from: number; readonly to: number; readonly sign: string };

export function lineShapes(drawn: LineToDraw): Shape[] {
  const { pack, marks = [], ties = [], overlays = [] } = drawn;
  const placed = placeLetters(pack, drawn.spacing as { tracking: number; offsets: number[] });
  const looks = { ...noLooks, ...drawn.looks };
  const open = drawn.open ?? openLetters(looks, drawn.chosen ?? 0, pack.letters.length);
  const scene: Scene = { drawn, pack, placed, open };
  const overlaid = (over: boolean) =>
    overlays.filter((one) => (one.over ?? false) === over).flatMap((one) => overlayShapes(scene, one));
  return [
    ...(drawn.baseline ? [ruleAt('baseline', [0])] : []),
    ...overlaid(false),
    ...shapesOf(looks, 'under', scene),
    ...(looks.hidden ? [] : lettersOf(scene)),
    ...overlaid(true),
    ...shapesOf(looks, 'over', scene),
    ...(marks.length > 0 ? [markShape(scene, marks)] : []),
    ...ties.flatMap((tie) => tieShapes(scene, tie)),
  ];
}

/** Where an outline of a letter goes. Letters of type are upright on their baseline: only dx is ever other than 0. */
const placeOf = ({ x, dy, turn }: PlacedLetter): Place => ({ dx: x, dy, turn });

/**
 * The path text of pieces in font units, y up: one text for all that are not turned, and one by itself for each that
 * is, with the place that it still has to be brought to.
 */
export function pathTexts(pieces: readonly Piece[]): { path: string; place: Place | null }[] {
  const turned = pieces.filter(({ place }) => place.turn !== 0);
  const upright = pieces.filter(({ place }) => place.turn === 0);
  return [
    ...(upright.length > 0 ? [{ path: upright.map(textOf).join(''), place: null }] : []),
    ...turned.map(({ outline, place }) => ({ path: textOf({ outline, place: origin }), place })),
  ];
}

type Scene = {
  readonly drawn: LineToDraw;
  readonly pack: Pack;
  readonly placed: PlacedLine;
  readonly open: OpenLetters;
};
type MadeShapes = (scene: Scene) => Shape[];

/**
 * What each look adds to the list, under the letters or over them, in the order of painting. The others change how the
 * whole is seen: which letters are open, which way the line is turned, on which ground it is, how sharp it is.
 */
const added: Record<LookName, { readonly under?: MadeShapes; readonly over?: MadeShapes } | 'the whole'> = {
  guides: { under: guideShapes },
  white: { under: betweenShapes },
  hidden: { under: betweenShapes },
  counters: { under: insideShapes },
  why: { over: whyShapes },
  three: 'the whole',
  head: 'the whole',
  mirror: 'the whole',
  opposite: 'the whole',
  blur: 'the whole',
};

function shapesOf(looks: Looks, layer: 'under' | 'over', scene: Scene): Shape[] {
  const makers = new Set<MadeShapes>();
  for (const [look, adds] of Object.entries(added) as [LookName, (typeof added)[LookName]][]) {
    const maker = adds === 'the whole' ? undefined : adds[layer];
    if (looks[look] && maker) makers.add(maker);
  }
  return [...makers].flatMap((make) => make(scene));
}

const glyphs = new WeakMap<Pack, (Outline | undefined)[]>();

function glyphOf(pack: Pack, glyph: number): Outline {
  const known = glyphs.get(pack) ?? [];
  glyphs.set(pack, known);
  return (known[glyph] ??= { unit: 1, path: pack.glyphs[glyph]!.path });
}

const piecesOf = (pack: Pack, letters: readonly PlacedLetter[]): Piece[] =>
  letters.map((letter) => ({ outline: glyphOf(pack, letter.glyph), place: placeOf(letter) }));

const opened = ({ placed, open }: Scene): PlacedLetter[] => placed.letters.slice(open.from, open.to + 1);

function lettersOf(scene: Scene): Shape[] {
  return [{ kind: 'path', role: 'letters', paint: 'fill', ink: 'ink', pieces: piecesOf(scene.pack, opened(scene)) }];
}

function overlayShapes(scene: Scene, { spacing, ink = 'note', dashed = false, heldAt }: Overlay): Shape[] {
  const other = placeLetters(scene.pack, spacing as { tracking: number; offsets: number[] });
  const shift = heldAt === undefined ? 0 : (scene.placed.letters[heldAt]?.x ?? 0) - (other.letters[heldAt]?.x ?? 0);
  const letters = opened({ ...scene, placed: other }).map((letter) => ({ ...letter, x: letter.x + shift }));
  return [
    {
      kind: 'path',
      role: 'overlay',
      paint: 'stroke',
      ink,
      width: 1.25,
      dashed,
      pieces: piecesOf(scene.pack, letters),
    },
  ];
}

const totalOf = ({ pack, drawn: { spacing } }: Scene, gap: number): PerMille =>
  (pack.builtIn[gap]! * 1000) / pack.unitsPerEm + spacing.tracking + spacing.offsets[gap]!;

function betweenShapes(scene: Scene): Shape[] {
  const pieces = scene.placed.gaps
    .slice(scene.open.from, Math.max(scene.open.from, scene.open.to))
    .map(({ index }) => ({
      outline: whiteBetween(scene.pack, index, totalOf(scene, index)),
      place: placeOf(scene.placed.letters[index]!),
    }));
  return [
    { kind: 'path', role: 'between', paint: 'hatch', ink: 'warm', alone: scene.drawn.looks?.hidden ?? false, pieces },
  ];
}

/**
 * Dots in what the measure counts, rings where a letter is open to one side: there the hatch of the gap goes on through
 * them.
 */
function insideShapes(scene: Scene): Shape[] {
  const pieces = (which: 'counted' | 'open'): Piece[] =>
    opened(scene).flatMap((letter) => {
      const outline = whiteInside(scene.pack, letter.index)[which];
      return outline ? [{ outline, place: placeOf(letter) }] : [];
    });
  return [
    { kind: 'path', role: 'inside', paint: 'dots', ink: 'cool', pieces: pieces('counted') },
    { kind: 'path', role: 'inside-open', paint: 'rings', ink: 'cool', pieces: pieces('open') },
  ];
}

const ruleAt = (role: Role, heights: readonly FontUnits[]): Shape => ({
  kind: 'rules',
  role,
  paint: 'rules',
  ink: 'rule',
  rules: heights.map((height) => ({ height, span: null })),
});

function guideShapes({ pack: { vertical } }: Scene): Shape[] {
  return [ruleAt('guides', [vertical.ascenderTop, vertical.capHeight, vertical.xHeight, 0, vertical.descender])];
}

/**
 * Both edges of the chosen gap as the outline has them (thin) and as they are seen (heavier): the distances that the
 * measure weighs.
 */
function whyShapes(scene: Scene): Shape[] {
  const gap = scene.drawn.chosen ?? null;
  const left = gap === null ? undefined : scene.placed.letters[gap];
  if (gap === null || !left || !scene.placed.gaps[gap]) return [];
  const unit = scene.pack.unitsPerEm / 1000;
  const { leftDrawn, rightDrawn, leftSeen, rightSeen } = pairProfiles(
    prepareLine(scene.pack),
    gap,
    totalOf(scene, gap),
  );
  const edge = (role: Role, ink: Ink, width: CssPx, lines: readonly (readonly number[])[]): Shape => ({
    kind: 'path',
    role,
    paint: 'stroke',
    ink,
    width,
    sharp: true,
    pieces: [
      { outline: { unit, lines: lines.filter((line) => line.length > 2), closed: false }, place: placeOf(left) },
    ],
  });
  return [
    {
      kind: 'rules',
      role: 'across',
      paint: 'rules',
      ink: 'warm',
      sharp: true,
      rules: crossings(leftSeen, rightSeen).map(({ height, from, to }) => ({
        height: height * unit,
        span: { from: left.x + from * unit, to: left.x + to * unit },
      })),
    },
    edge('edge-drawn', 'cool', 1, [...leftDrawn, ...rightDrawn]),
    edge('edge-seen', 'note', 2, [leftSeen, rightSeen]),
  ];
}

/**
 * Level lines across the gap, one at every third height that counts: enough to see how deep the measure looks. 1/1000
 * em.
 */
function crossings(left: readonly number[], right: readonly number[]): { height: number; from: number; to: number }[] {
  const found = [];
  for (let i = 0; i + 1 < Math.min(left.length, right.length); i += 6)
    found.push({ height: left[i + 1]!, from: left[i]!, to: right[i]! });
  return found;
}

/** A pair of wedges under a gap: their points meet where it is too tight and turn away where it is too wide. */
function markShape({ pack, placed }: Scene, marks: readonly GapMark[]): Shape {
  const em = pack.unitsPerEm;
  const height = -Math.max(-pack.vertical.descender, 0.24 * em) - 0.05 * em;
  return {
    kind: 'path',
    role: 'mark',
    paint: 'fill',
    ink: 'mark',
    sharp: true,
    upright: true,
    pieces: marks.map(({ gap, fault, strength }) => ({
      outline: { unit: 1, lines: wedges((0.03 + 0.02 * strength) * em, fault), closed: true },
      place: { dx: placed.gaps[gap]!.centre, dy: height, turn: 0 },
    })),
  };
}

function wedges(size: FontUnits, fault: GapMark['fault']): number[][] {
  const apart = size * 0.25;
  // From the gap's middle outwards: the point first when the letters press in, the back first when they are apart.
  const [point, back] = fault === 'tight' ? [apart, apart + size] : [apart + size, apart];
  return [-1, 1].map((side) => [side * point, 0, side * back, size * 0.7, side * back, -size * 0.7]);
}

/** A hairline from a gap to the lower edge, a bracket where a note is about a run. */
function tieShapes({ pack, placed, drawn }: Scene, { from, to, sign }: GapTie): Shape[] {
  const em = pack.unitsPerEm;
  const size = 0.17 * em;
  const foot = drawn.foot ?? pack.vertical.descender - 0.3 * em;
  const [left, right] = [placed.gaps[from]!.centre, placed.gaps[to]!.centre];
  const half = (right - left) / 2;
  const [top, bend] = [-0.05 * em, -0.09 * em];
  const place = { dx: left + half, dy: 0, turn: 0 };
  const bracket = from === to ? [] : [[-half, top, -half, bend, half, bend, half, top]];
  const stem = [0, from === to ? top : bend, 0, foot + size * 1.15];
  return [
    {
      kind: 'path',
      role: 'tie',
      paint: 'stroke',
      ink: 'note',
      width: 1,
      sharp: true,
      upright: true,
      pieces: [{ outline: { unit: 1, lines: [...bracket, stem], closed: false }, place }],
    },
    {
      kind: 'sign',
      role: 'tie-sign',
      paint: 'sign',
      ink: 'note',
      sharp: true,
      upright: true,
      text: sign,
      size,
      place: { ...place, dy: foot + size * 0.15 },
    },
  ];
}

const origin: Place = { dx: 0, dy: 0, turn: 0 };

/** Path text of a piece that is not turned, two decimals. */
function textOf({ outline, place }: Piece): string {
  if ('path' in outline) return shiftedPath(outline.path, place.dx, place.dy);
  return outline.lines
    .map((points) => {
      const moved = points.map((value, i) => hundredths(value * outline.unit + (i % 2 === 0 ? place.dx : place.dy)));
      const rest = moved.slice(2);
      return `M${moved[0]} ${moved[1]}${rest.length > 0 ? `L${rest.join(' ')}` : ''}${outline.closed ? 'Z' : ''}`;
    })
    .join('');
}

const hundredths = (value: number): number => Math.floor(value * 100 + 0.5) / 100;

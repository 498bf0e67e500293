import { useEffect, useRef, useSyncExternalStore } from 'react';
import { drawSoon, filterFor, forgetDrawing } from '@/app/_line/brush';
import { type Frame, inkEdges, lineFits, originFor, reachOf, type Span } from '@/app/_line/frame';
import { inksOf, opposite } from '@/app/_line/inks';
import { type SpacingDocument, spacingOf } from '@/shared/editing/document';
import { flipsOf, noLooks } from '@/shared/line/looks';
import { type PlacedLine, placeLetters } from '@/shared/outline/place-letters';
import type { Pack } from '@/shared/schemas/pack';
import type { CssPx } from '@/shared/units';
import styles from '../bench.module.css';
import { useSession } from '../context';
import { sliderReach } from '../gap-sliders';
import type { BenchProps } from '../props';
import type { BenchSession } from '../session/session';
import { type BenchState, chosenRun, current, openWindow, overlayDocument, shownDocument } from '../session/state';
import type { LineOrder } from './order';
import { currentPainter, keepUntilPainted, onPainterChange } from './painter';

export type Drawn = { readonly frame: Frame; readonly placed: PlacedLine; readonly em: CssPx };

type Props = {
  kind: 'true' | 'working' | 'small' | 'beside';
  /** Em in CSS px for the available width. */
  em: (width: CssPx, state: BenchState) => CssPx;
  /** Called with each drawing, so that elements on top can follow the line. */
  onDrawn?: (drawn: Drawn) => void;
};

/**
 * White at both ends of the line. The views on the main sheet share one left edge; the ladder has its own in the style
 * sheet.
 */
const MARGIN = 24;
/** Room over and under the letters, for the ticks of the chosen gap. */
const ROOM = { true: 10, working: 22, beside: 6, small: 4 };
/** Length of the ticks at the chosen gap; 0 = none. */
const TICK = { true: 6, working: 14, beside: 0, small: 0 };

/**
 * Position of the line in the working view, and (font units) of the letter before the chosen gap: the line at true size
 * keeps that letter aligned with it.
 */
const workingPlaces = new WeakMap<BenchSession, { origin: CssPx; turning: CssPx; held: number }>();

/** One drawing of the line. It subscribes to the state itself and orders its own painting, without React. */
export function LineCanvas({ kind, em, onDrawn }: Props) {
  const session = useSession();
  const holderRef = useRef<HTMLDivElement>(null);
  // Position of the line and the letter it is aligned by, kept when another painter takes over in the middle of a drag.
  const placeRef = useRef<{ origin: CssPx | null; turning: CssPx | null }>({ origin: null, turning: null });
  const painter = useSyncExternalStore(onPainterChange, currentPainter, currentPainter);
  useEffect(() => {
    const holder = holderRef.current;
    if (!holder) return;
    const canvas = addCanvas(holder, kind);
    const number = painter.take(canvas);
    const pack = painter.packNumber(session.props.pack);
    // Reading the width in the middle of a frame would make the browser compute the layout again.
    let width: CssPx = holder.clientWidth;
    let margin = marginOf(holder);
    let { origin, turning } = placeRef.current;
    let last: BenchState | null = null;
    let fits = true;
    let sharp: { canvas: HTMLCanvasElement; number: number } | null = null;

    const draw = () => {
      const { props, store } = session;
      const state = store.get();
      const document = documentFor(kind, state, props);
      if (!document) return;
      const size = em(width, state);
      const dpr = window.devicePixelRatio || 1;
      const reach = reachOf(props.pack);
      const height = Math.ceil((reach.over + reach.under) * size + 2 * ROOM[kind]);
      const placed = placedOf(props.pack, document);
      const scale = size / props.pack.unitsPerEm;
      const view = { width, margin, scale };
      // During a drag the line stays where it is.
      const work = kind === 'beside' ? workingPlaces.get(session) : undefined;
      if (work) {
        origin = work.origin + (work.held - (placed.letters[state.chosen.head]?.x ?? 0)) * scale;
        turning = work.turning;
        // It follows the working view, also when a drag ends.
        fits = false;
      } else if (!state.history.gesture || origin === null || turning === null) {
        const open = openWindow(state, props.pack.letters.length);
        // The label under a covered line would be far from its three letters.
        const ink = inkEdges(
          props.pack,
          placed,
          kind === 'small' || kind === 'true' ? open : { from: 0, to: props.pack.letters.length - 1 },
        );
        const follow = state.looks.three
          ? inkEdges(props.pack, placed, open)
          : chosenSpan(state, placed, (width - 2 * margin) / scale);
        origin = originFor(view, { ink, follow }, origin);
        fits = lineFits(view, ink);
        turning = fits ? margin + ((ink.to - ink.from) * scale) / 2 : width / 2;
      }
      if (kind === 'working')
        workingPlaces.set(session, { origin, turning, held: placed.letters[state.chosen.head]?.x ?? 0 });
      const frame: Frame = {
        width,
        height,
        scale,
        originX: origin,
        baselineY: Math.round(ROOM[kind] + reach.over * size),
        ...flipsOf(state.looks),
        axisX: turning,
      };
      const marks = {
        chosen:
          TICK[kind] === 0
            ? null
            : {
                run: chosenRun(state),
                length: TICK[kind],
                bar: kind === 'working' && state.byKeys ? 2 * sliderReach(size) : 0,
              },
        why: kind === 'working' && state.looks.why,
      };
      const order: LineOrder = {
        kind: 'line',
        canvas: number,
        pack,
        dpr,
        document,
        frame,
        inks: inksOf(state.looks.opposite ? opposite(props.ground) : props.ground),
        looks: looksFor(kind, size, state),
        window: openWindow(state, props.pack.letters.length),
        under: kind === 'working' && state.overlayMode === 'under' ? overlayDocument(state, props) : null,
        head: state.chosen.head,
        ...marks,
      };
      // Marks on a blurred line stay sharp: they have a canvas of their own above it.
      if (state.looks.blur && marks.chosen) {
        sharp ??= sharpOver(holder, painter);
        setStyle(sharp.canvas, { width: `${width}px`, height: `${height}px` });
        painter.paint({ ...order, canvas: sharp.number, looks: noLooks, window: { from: 0, to: -1 }, under: null });
        painter.paint({ ...order, chosen: null, why: false });
      } else {
        sharp = forgetSharp(sharp, painter);
        painter.paint(order);
      }
      setStyle(canvas, {
        width: `${width}px`,
        height: `${height}px`,
        filter: filterFor(state.looks, size),
      });
      onDrawn?.({ frame, placed, em: size });
      last = state;
    };
    const redraw = () => drawSoon(draw);
    // At once and not in the next frame: the painter has its own thread, so an early order is on the screen earlier.
    const unsubscribe = session.store.subscribe(() => {
      if (!last || differs(session.store.get(), last, kind, fits)) draw();
    });
    const observer = new ResizeObserver(([entry]) => {
      width = Math.floor(entry?.contentRect.width ?? width);
      margin = marginOf(holder);
      redraw();
    });
    observer.observe(holder);
    window.addEventListener('resize', redraw);
    redraw();
    return () => {
      unsubscribe();
      observer.disconnect();
      window.removeEventListener('resize', redraw);
      forgetDrawing(draw);
      forgetSharp(sharp, painter);
      painter.forget(number);
      keepUntilPainted(canvas);
      placeRef.current = { origin, turning };
    };
  }, [session, kind, em, onDrawn, painter]);
  return <div ref={holderRef} className={styles.holder} />;
}

const marginOf = (holder: HTMLElement): CssPx =>
  Number.parseFloat(getComputedStyle(holder).getPropertyValue('--line-margin')) || MARGIN;

/**
 * The part of the line that must be visible: the chosen gap, and the whole run where there is room (font units) for it.
 */
function chosenSpan(state: BenchState, { gaps }: PlacedLine, room: number): Span {
  const centre = (gap: number) => gaps[gap]?.centre ?? 0;
  const run = chosenRun(state);
  const span = { from: centre(run.first), to: centre(run.last) };
  return span.to - span.from <= room ? span : { from: centre(state.chosen.head), to: centre(state.chosen.head) };
}

type Painter = ReturnType<typeof currentPainter>;

function sharpOver(holder: HTMLElement, painter: Painter): { canvas: HTMLCanvasElement; number: number } {
  const canvas = document.createElement('canvas');
  canvas.className = styles.sharp ?? '';
  canvas.setAttribute('aria-hidden', 'true');
  holder.append(canvas);
  return { canvas, number: painter.take(canvas) };
}

function forgetSharp(sharp: { canvas: HTMLCanvasElement; number: number } | null, painter: Painter): null {
  if (!sharp) return null;
  painter.forget(sharp.number);
  sharp.canvas.remove();
  return null;
}

/** Control of a canvas can be transferred only once, so each drawing makes its own. */
function addCanvas(holder: HTMLElement, kind: Props['kind']): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  canvas.className = styles.canvas ?? '';
  canvas.dataset.view = kind;
  canvas.setAttribute('aria-hidden', 'true');
  holder.append(canvas);
  return canvas;
}

function documentFor(kind: Props['kind'], state: BenchState, props: BenchProps): SpacingDocument | null {
  return kind === 'beside' ? overlayDocument(state, props) : shownDocument(state, props);
}

/** Textures can't be read on very small lines, and guides belong to the working view. */
function looksFor(kind: Props['kind'], size: CssPx, { looks }: BenchState): BenchState['looks'] {
  const large = kind !== 'small' && size >= 40;
  return {
    ...looks,
    white: looks.white && large,
    counters: looks.counters && large,
    guides: looks.guides && kind !== 'small' && kind !== 'true',
  };
}

/** Whether anything shown in this drawing has changed. A line wider than its view may scroll once the drag ends. */
function differs(a: BenchState, b: BenchState, kind: Props['kind'], fits: boolean): boolean {
  return (
    current(a) !== current(b) ||
    (!fits && a.history.gesture !== b.history.gesture) ||
    a.replayed !== b.replayed ||
    a.looks !== b.looks ||
    a.shown !== b.shown ||
    a.overlay !== b.overlay ||
    a.overlayMode !== b.overlayMode ||
    a.otherTurn !== b.otherTurn ||
    a.screen !== b.screen ||
    a.room !== b.room ||
    (a.atTrue !== b.atTrue && kind !== 'small') ||
    (a.byKeys !== b.byKeys && kind === 'working') ||
    (a.chosen !== b.chosen && (kind !== 'small' || a.looks.three)) ||
    (a.zoom !== b.zoom && kind !== 'small')
  );
}

const written = new WeakMap<HTMLCanvasElement, Record<string, string>>();

/** Writes only what differs from the last time: reading styles back from an element costs more than the drawing. */
function setStyle(canvas: HTMLCanvasElement, wanted: Record<string, string>): void {
  const before = written.get(canvas) ?? {};
  for (const [name, value] of Object.entries(wanted)) if (before[name] !== value) canvas.style.setProperty(name, value);
  written.set(canvas, wanted);
}

const known = new WeakMap<SpacingDocument, { readonly pack: Pack; readonly placed: PlacedLine }>();

/** Positions of the letters, computed once for all drawings of a spacing. */
function placedOf(pack: Pack, document: SpacingDocument): PlacedLine {
  const found = known.get(document);
  if (found?.pack === pack) return found.placed;
  const placed = placeLetters(pack, spacingOf(document));
  known.set(document, { pack, placed });
  return placed;
}

import { useEffect, useRef } from 'react';
import { placeLetters, type PlacedLine } from '@/shared/outline/place-letters';
import { spacingOf, type SpacingDocument } from '@/shared/editing/document';
import type { CssPx } from '@/shared/units';
import type { BenchProps } from '../props';
import { useSession } from '../context';
import { laidDocument, openWindow, shownDocument } from '../session/shown';
import { chosenRun, type BenchState } from '../session/state';
import styles from '../bench.module.css';
import { lineArt } from './art';
import { originFor, type Frame } from './frame';
import { inksOf, opposite } from './inks';
import { paintLine, paintUnder, type Painting } from './paint-line';
import { paintChosen, paintWhy } from './paint-marks';
import { drawSoon, forgetDrawing } from './schedule';
import { reachOf } from './sizes';

export type Drawn = { readonly frame: Frame; readonly placed: PlacedLine; readonly em: CssPx };

type Props = {
  kind: 'true' | 'working' | 'small' | 'beside';
  /** Em in CSS px, given the width there is. */
  em: (width: CssPx, state: BenchState) => CssPx;
  /** Called after each drawing, in the same frame, so that what lies over the line keeps to it. */
  onDrawn?: (drawn: Drawn) => void;
};

/** White at both ends of the line. The views on the main sheet share one left edge. */
const MARGIN = { true: 24, working: 24, beside: 24, small: 2 };
/** Room over and under the letters, for the ticks of the chosen gap. */
const ROOM = { true: 10, working: 22, beside: 6, small: 4 };

/** One drawing of the line. It listens to the state by itself and draws at most once a frame, without React. */
export function LineCanvas({ kind, em, onDrawn }: Props) {
  const session = useSession();
  const canvasRef = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const canvas = canvasRef.current;
    const holder = canvas?.parentElement;
    const context = canvas?.getContext('2d');
    if (!canvas || !holder || !context) return;
    // Asking for the width in the middle of a frame would make the browser lay the page out again.
    let width: CssPx = holder.clientWidth;
    let origin: CssPx | null = null;
    let turning: CssPx | null = null;
    let last: BenchState | null = null;

    const draw = () => {
      const { props, store } = session;
      const state = store.get();
      const document = documentFor(kind, state, props);
      if (!document) return;
      const size = em(width, state);
      const dpr = window.devicePixelRatio || 1;
      const art = lineArt(props.pack);
      const reach = reachOf(props.pack);
      const height = Math.ceil((reach.over + reach.under) * size + 2 * ROOM[kind]);
      fitCanvas(canvas, width, height, dpr);
      const placed = placeLetters(props.pack, spacingOf(document));
      const scale = size / props.pack.unitsPerEm;
      const follow = placed.gaps[state.chosen.head]?.centre ?? 0;
      // While the hand holds on, the line stays where it is.
      if (!state.history.gesture || origin === null || turning === null) {
        origin = originFor({ width, margin: MARGIN[kind], scale }, { width: placed.width, follow }, origin);
        const fits = placed.width * scale + 2 * MARGIN[kind] <= width;
        turning = fits ? origin + (placed.width * scale) / 2 : width / 2;
      }
      const frame: Frame = {
        width,
        height,
        scale,
        originX: origin,
        baselineY: Math.round(ROOM[kind] + reach.over * size),
        flipX: state.looks.head !== state.looks.mirror,
        flipY: state.looks.head,
        axisX: turning,
      };
      const ground = state.looks.opposite ? opposite(props.ground) : props.ground;
      const painting: Painting = {
        context, dpr, frame, art, placed, document,
        inks: inksOf(canvas, ground),
        looks: looksFor(kind, size, state),
        window: openWindow(state, props.pack.letters.length),
      };
      context.setTransform(1, 0, 0, 1, 0, 0);
      context.clearRect(0, 0, canvas.width, canvas.height);
      const laid = kind === 'working' && state.laying === 'under' ? laidDocument(state, props) : null;
      if (laid) paintUnder(underOf(painting, laid, props, state.chosen.head));
      paintLine(painting);
      if (kind === 'working' && state.looks.why) paintWhy(painting, state.chosen.head);
      if (kind === 'working' || kind === 'true') paintChosen(painting, chosenRun(state), kind === 'working' ? 14 : 6);
      const blur = state.looks.blur ? `blur(${(0.028 * size).toFixed(2)}px)` : '';
      if (canvas.style.filter !== blur) canvas.style.filter = blur;
      onDrawn?.({ frame, placed, em: size });
      last = state;
    };
    const redraw = () => drawSoon(draw);
    const changed = () => {
      if (!last || differs(session.store.get(), last, kind)) redraw();
    };
    const unsubscribe = session.store.subscribe(changed);
    const observer = new ResizeObserver(([entry]) => {
      width = Math.floor(entry?.contentRect.width ?? width);
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
    };
  }, [session, kind, em, onDrawn]);
  return <canvas ref={canvasRef} className={styles.canvas} data-view={kind} aria-hidden="true" />;
}

function documentFor(kind: Props['kind'], state: BenchState, props: BenchProps): SpacingDocument | null {
  return kind === 'beside' ? laidDocument(state, props) : shownDocument(state, props);
}

/** Textures say nothing on very small lines, and guides belong to the working view. */
function looksFor(kind: Props['kind'], size: CssPx, { looks }: BenchState): BenchState['looks'] {
  const large = kind !== 'small' && size >= 40;
  return { ...looks, white: looks.white && large, counters: looks.counters && large, guides: looks.guides && kind !== 'small' && kind !== 'true' };
}

/** The other setting, laid so that the letter in front of the chosen gap is the same in both. */
function underOf(painting: Painting, laid: SpacingDocument, props: BenchProps, pair: number): Painting {
  const placed = placeLetters(props.pack, spacingOf(laid));
  const shift = (painting.placed.letters[pair]?.x ?? 0) - (placed.letters[pair]?.x ?? 0);
  const frame = { ...painting.frame, originX: painting.frame.originX + shift * painting.frame.scale };
  return { ...painting, placed, document: laid, frame };
}

/** Whether anything that this drawing shows has changed. */
function differs(a: BenchState, b: BenchState, kind: Props['kind']): boolean {
  return (
    a.history !== b.history || a.looks !== b.looks || a.shown !== b.shown || a.laid !== b.laid || a.laying !== b.laying || a.otherTurn !== b.otherTurn || a.replayed !== b.replayed || a.screen !== b.screen ||
    (a.chosen !== b.chosen && (kind !== 'small' || a.looks.three)) || (a.zoom !== b.zoom && (kind === 'working' || kind === 'beside'))
  );
}

function fitCanvas(canvas: HTMLCanvasElement, width: CssPx, height: CssPx, dpr: number): void {
  const [across, down] = [Math.round(width * dpr), Math.round(height * dpr)];
  if (canvas.width !== across) canvas.width = across;
  if (canvas.height !== down) canvas.height = down;
  const style = { width: `${width}px`, height: `${height}px` };
  if (canvas.style.width !== style.width) canvas.style.width = style.width;
  if (canvas.style.height !== style.height) canvas.style.height = style.height;
}

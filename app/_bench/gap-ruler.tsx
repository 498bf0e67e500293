import { useEffect, useImperativeHandle, useRef, useSyncExternalStore, type Ref } from 'react';
import { rulerInksOf, type RulerInks } from '@/app/_line/inks';
import type { Drawn } from './drawing/line-canvas';
import { RULER_HEIGHT } from './drawing/sizes';
import { currentPainter, keepUntilPainted, onPainterChange } from './drawing/painter';
import { drawSoon, forgetDrawing } from '@/app/_line/brush';
import { shownDocument } from './session/state';
import { tellsAtLeast } from '@/shared/exercise/what-the-bench-tells';
import type { BenchProps } from './props';
import { onUsual, usualNow } from './use-usual';
import { useSession } from './context';
import type { RulerOrder } from './drawing/order';
import styles from './bench.module.css';

export type RulerHandle = { place(drawn: Drawn): void };

/** Changes to the page's colours while it is open. */
const THEMES = ['(prefers-color-scheme: dark)', '(forced-colors: active)', '(prefers-contrast: more)'];

/** One gauge per gap, under the line; drawing/paint-ruler.ts explains how it is read. */
export function GapRuler({ ref }: { ref: Ref<RulerHandle> }) {
  const session = useSession();
  const holderRef = useRef<HTMLDivElement>(null);
  const placeRef = useRef<(drawn: Drawn) => void>(() => undefined);
  const lastRef = useRef<Drawn | null>(null);
  const painter = useSyncExternalStore(onPainterChange, currentPainter, currentPainter);
  useImperativeHandle(
    ref,
    () => ({
      place(drawn) {
        lastRef.current = drawn;
        placeRef.current(drawn);
      },
    }),
    [],
  );

  useEffect(() => {
    const holder = holderRef.current;
    if (!holder) return;
    const canvas = document.createElement('canvas');
    canvas.className = styles.canvas ?? '';
    canvas.setAttribute('aria-hidden', 'true');
    holder.append(canvas);
    const number = painter.take(canvas);
    const pack = painter.packNumber(session.props.pack);
    let inks: RulerInks = rulerInksOf(holder);
    let width = 0;
    canvas.style.height = `${RULER_HEIGHT}px`;
    placeRef.current = ({ frame }) => {
      const state = session.store.get();
      const dpr = window.devicePixelRatio || 1;
      if (width !== frame.width) canvas.style.width = `${(width = frame.width)}px`;
      painter.paint({
        kind: 'ruler',
        canvas: number,
        pack,
        dpr,
        document: shownDocument(state, session.props),
        frame: { ...frame, height: RULER_HEIGHT },
        inks,
        head: state.chosen.head,
        usual: usualOf(session.props),
        reference: referenceOf(session, state.overlay),
      });
    };
    const again = () => {
      inks = rulerInksOf(holder);
      if (lastRef.current) placeRef.current(lastRef.current);
    };
    const themes = THEMES.map((query) => window.matchMedia(query));
    for (const theme of themes) theme.addEventListener('change', again);
    drawSoon(again);
    const unsubscribe = onUsual(again);
    return () => {
      for (const theme of themes) theme.removeEventListener('change', again);
      forgetDrawing(again);
      unsubscribe();
      placeRef.current = () => undefined;
      painter.forget(number);
      keepUntilPainted(canvas);
    };
  }, [session, painter]);
  return <div ref={holderRef} className={styles.ruler} data-part="gauges" />;
}

function usualOf({ pack, size, tells }: BenchProps): RulerOrder['usual'] {
  const usual = tellsAtLeast(tells, 'evenness') ? usualNow(pack) : null;
  return usual && { ...usual, size };
}

function referenceOf({ props }: ReturnType<typeof useSession>, overlay: string | null): RulerOrder['reference'] {
  if (!tellsAtLeast(props.tells, 'everything')) return null;
  const found = props.overlays?.find(({ id }) => id === overlay);
  return found?.tolerances
    ? {
        document: { tracking: found.spacing.tracking, offsets: found.spacing.offsets },
        tolerances: found.tolerances,
      }
    : null;
}

import { type RefObject, useCallback, useEffect, useMemo, useRef } from 'react';
import { numberText, withUnit } from '@/shared/text/number';
import { reachOf, setWidthOf } from '../_line/frame';
import { sizeInPx } from './drawing/sizes';
import { planViews, type LineSize, type Views } from './drawing/views';
import { type Drawn, LineCanvas } from './drawing/line-canvas';
import { GapRuler, type RulerHandle } from './gap-ruler';
import { GapSliders, type SlidersHandle } from './gap-sliders';
import { attachPointer } from './input/pointer';
import { useBench, useSession } from './context';
import styles from './bench.module.css';
import type { CssPx } from '@/shared/units';
import type { BenchProps } from './props';
import { pxPerMmNow } from './session/screen';
import type { BenchState } from './session/state';

type Props = { sheet: string; sheetRef: RefObject<HTMLDivElement | null>; ruler: boolean };

/**
 * The sheet: the line at its true size, and large with a slider over each gap; the ruler under it where the bench may
 * tell. See drawing/views.ts for what is shown when there is less room.
 */
export function WorkingView({ sheet, sheetRef, ruler }: Props) {
  const session = useSession();
  const { size } = session.props;
  const inputRef = useRef<HTMLDivElement>(null);
  const sliders = useRef<SlidersHandle>(null);
  const gauges = useRef<RulerHandle>(null);
  const drawnRef = useRef<Drawn | null>(null);
  const views = useMemo(() => viewsOf(session.props), [session]);
  const aboveEm = useCallback((width: CssPx, state: BenchState) => views(width, state).above ?? 0, [views]);
  const em = useCallback((width: CssPx, state: BenchState) => views(width, state).working, [views]);
  const shownAbove = useBench((state) => state.room !== null && views(0, state).above !== null);
  const beside = useBench((state) => state.overlay !== null && state.overlayMode === 'beside');
  const onDrawn = useCallback((drawn: Drawn) => {
    drawnRef.current = drawn;
    // Kept while another painter takes over, or the sheet would lose how far it is scrolled.
    const height = `${drawn.frame.height}px`;
    if (inputRef.current && inputRef.current.style.minHeight !== height) inputRef.current.style.minHeight = height;
    sliders.current?.place(drawn);
    gauges.current?.place(drawn);
  }, []);

  useEffect(() => {
    const [ground, working] = [sheetRef.current, inputRef.current];
    if (!ground || !working) return;
    const observer = new ResizeObserver(() => bringFeetIntoView(ground, working));
    for (const one of [ground, ...ground.children]) observer.observe(one);
    return () => observer.disconnect();
  }, [sheetRef, shownAbove]);

  useEffect(() => {
    const input = inputRef.current;
    if (!input) return;
    return attachPointer(
      input,
      session,
      () => drawnRef.current,
      (pair) => sliders.current?.focus(pair),
    );
  }, [session]);

  return (
    <>
      <div ref={sheetRef} className={`${sheet} ${styles.sheet}`}>
        {shownAbove && (
          <>
            <LineCanvas kind="true" em={aboveEm} />
            <Scale size={size} em={(state) => views(0, state).above ?? 0} />
          </>
        )}
        <div ref={inputRef} className={styles.working}>
          <LineCanvas kind="working" em={em} onDrawn={onDrawn} />
          <GapSliders ref={sliders} />
        </div>
        {!shownAbove && <Scale size={size} em={(state) => views(0, state).working} trueSize />}
        {beside && (
          <div className={styles.beside}>
            <OverlayName />
            <LineCanvas kind="beside" em={em} />
          </div>
        )}
      </div>
      {ruler && <GapRuler ref={gauges} />}
    </>
  );
}

/** Letters that are too large for what the sheet has left are seen whole before the small line over them is. */
function bringFeetIntoView(sheet: HTMLElement, working: HTMLElement): void {
  const below = working.getBoundingClientRect().bottom - sheet.getBoundingClientRect().top - sheet.clientHeight;
  if (below > 0) sheet.scrollTop += below;
}

/** What the sheet shows in a state of the bench; `width` counts only until the room was measured. */
function viewsOf({ pack, size, accommodations }: BenchProps): (width: CssPx, state: BenchState) => Views {
  const [widthEm, reach] = [setWidthOf(pack), reachOf(pack)];
  return (width, state) => {
    const line: LineSize = {
      widthEm,
      reachEm: reach.over + reach.under,
      trueEm: sizeInPx(size, pxPerMmNow(state.screen, window.devicePixelRatio)),
    };
    return planViews(line, state.room ?? { width, height: null }, state, accommodations);
  };
}

/** How large the line is: as it will be, or at which part of that. */
function Scale({
  size,
  em,
  trueSize,
}: Pick<BenchProps, 'size'> & { em: (state: BenchState) => CssPx; trueSize?: boolean }) {
  const session = useSession();
  const part = useBench((state) => em(state) / sizeInPx(size, pxPerMmNow(state.screen, window.devicePixelRatio)));
  const atTrue = useBench((state) => state.atTrue);
  const isTrue = Math.abs(part - 1) < 0.005;
  const name = withUnit(size.value, size.unit);
  return (
    <p className={styles.sheetLabel}>
      {isTrue ? `${name}, as it will be` : `${name}, shown here at ${numberText(Math.round(100 * part))}%`}
      {(!isTrue || (trueSize && atTrue)) && (
        <>
          {' '}
          <button
            type="button"
            className={styles.onSheet}
            aria-pressed={atTrue}
            onClick={() => session.store.set({ atTrue: !atTrue })}
          >
            True size
          </button>
        </>
      )}
    </p>
  );
}

function OverlayName() {
  const { overlays, start } = useSession().props;
  const overlay = useBench((state) => state.overlay);
  const name =
    overlay === 'built-in'
      ? 'Built-in'
      : overlay === 'start'
        ? start?.label
        : overlays?.find(({ id }) => id === overlay)?.label;
  return <p className={styles.sheetLabel}>{name}</p>;
}

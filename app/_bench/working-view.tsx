import { useCallback, useEffect, useMemo, useRef } from 'react';
import { setWidthOf } from '../_line/frame';
import { sizeInPx, workingEm } from './drawing/sizes';
import { LineCanvas, type Drawn } from './drawing/line-canvas';
import { GapRuler, type RulerHandle } from './gap-ruler';
import { GapSliders, type SlidersHandle } from './gap-sliders';
import { attachPointer } from './hands/pointer';
import { useBench, useSession } from './context';
import styles from './bench.module.css';
import type { CssPx } from '@/shared/units';
import type { BenchState } from './session/state';

/** The line large, with a slider over each gap; the ruler under it where the bench may tell. */
export function WorkingView({
  onSheet,
  ruler,
}: {
  onSheet: (part: React.ReactNode) => React.ReactNode;
  ruler: boolean;
}) {
  const session = useSession();
  const { pack, size, underlays, start } = session.props;
  const handsRef = useRef<HTMLDivElement>(null);
  const sliders = useRef<SlidersHandle>(null);
  const gauges = useRef<RulerHandle>(null);
  const drawnRef = useRef<Drawn | null>(null);
  const beside = useBench((state) => state.laid !== null && state.laying === 'beside');
  const laid = useBench((state) => state.laid);
  const widthInEm = useMemo(() => setWidthOf(pack), [pack]);
  const trueEm = sizeInPx(size);
  const em = useCallback(
    (width: CssPx, { zoom }: BenchState) => workingEm(pack, widthInEm, trueEm, width, zoom),
    [pack, widthInEm, trueEm],
  );
  const onDrawn = useCallback((drawn: Drawn) => {
    drawnRef.current = drawn;
    sliders.current?.place(drawn);
    gauges.current?.place(drawn);
  }, []);

  useEffect(() => {
    const hands = handsRef.current;
    if (!hands) return;
    return attachPointer(
      hands,
      session,
      () => drawnRef.current,
      (pair) => sliders.current?.focus(pair),
    );
  }, [session]);

  const name =
    laid === 'built-in'
      ? 'Built-in'
      : laid === 'start'
        ? start?.label
        : underlays?.find(({ id }) => id === laid)?.label;
  return (
    <>
      {onSheet(
        <>
          <div ref={handsRef} className={styles.working}>
            <LineCanvas kind="working" em={em} onDrawn={onDrawn} />
            <GapSliders ref={sliders} />
          </div>
          {beside && (
            <div className={styles.beside}>
              <p className={styles.sheetLabel}>{name}</p>
              <LineCanvas kind="beside" em={em} />
            </div>
          )}
        </>,
      )}
      {ruler && <GapRuler ref={gauges} />}
    </>
  );
}

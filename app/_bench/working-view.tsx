import { useCallback, useEffect, useMemo, useRef } from 'react';
import { setWidthOf } from '../_line/frame';
import { sizeInPx, workingEm } from './drawing/sizes';
import { type Drawn, LineCanvas } from './drawing/line-canvas';
import { GapRuler, type RulerHandle } from './gap-ruler';
import { GapSliders, type SlidersHandle } from './gap-sliders';
import { attachPointer } from './input/pointer';
import { useBench, useSession } from './context';
import styles from './bench.module.css';
import type { CssPx } from '@/shared/units';
import type { BenchState } from './session/state';

/** The line large, with a slider over each gap; the ruler under it where the bench may show it. */
export function WorkingView({
  onSheet,
  ruler,
}: {
  onSheet: (part: React.ReactNode) => React.ReactNode;
  ruler: boolean;
}) {
  const session = useSession();
  const { pack, size, overlays, start } = session.props;
  const inputRef = useRef<HTMLDivElement>(null);
  const sliders = useRef<SlidersHandle>(null);
  const gauges = useRef<RulerHandle>(null);
  const drawnRef = useRef<Drawn | null>(null);
  const beside = useBench((state) => state.overlay !== null && state.overlayMode === 'beside');
  const overlay = useBench((state) => state.overlay);
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
    const input = inputRef.current;
    if (!input) return;
    return attachPointer(
      input,
      session,
      () => drawnRef.current,
      (pair) => sliders.current?.focus(pair),
    );
  }, [session]);

  const name =
    overlay === 'built-in'
      ? 'Built-in'
      : overlay === 'start'
        ? start?.label
        : overlays?.find(({ id }) => id === overlay)?.label;
  return (
    <>
      {onSheet(
        <>
          <div ref={inputRef} className={styles.working}>
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

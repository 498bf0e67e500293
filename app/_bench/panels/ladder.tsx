import { useCallback, useMemo } from 'react';
import { withUnit } from '@/shared/text/number';
import { smallestInUse } from '@/shared/exercise/sizes';
import type { Size } from '@/shared/schemas/spacing';
import { useBench, useSession } from '../context';
import type { BenchProps } from '../props';
import { pxPerMmNow } from '../session/screen';
import type { BenchState } from '../session/state';
import { LineCanvas } from '../drawing/line-canvas';
import { reachOf, setWidthOf } from '@/app/_line/frame';
import { ladderSizes, sizeInPx } from '../drawing/sizes';
import styles from '../bench.module.css';

/** Widest line that hangs at the margin, and what a rung takes beside its letters, CSS px. */
const AT_MARGIN = 288;
const AROUND_RUNG = 45;
/** The margin reaches further down than the sheet; under a reference’s ladder are tolerance, reason and recording. */
const UNDER_SHEET = 40;
const TOLERANCE = 150;

/**
 * The sizes that hang at the margin, largest first: those that are not too long for it, and of those as many as there is
 * height for. The smallest is always there, if need be following the chosen gap.
 */
function planLadder(
  { pack, size, ladder, smallestSize }: Pick<BenchProps, 'pack' | 'size' | 'ladder' | 'smallestSize'>,
  height: number | null,
): readonly Size[] {
  const widthInEm = setWidthOf(pack);
  const { over, under } = reachOf(pack);
  const all = ladder ?? ladderSizes(size, smallestSize);
  const fitting = all.filter((step) => sizeInPx(step) * widthInEm <= AT_MARGIN);
  const sizes = fitting.length === 0 ? all.slice(-1) : fitting;
  const taken = (steps: readonly Size[]) =>
    steps.reduce((sum, step) => sum + sizeInPx(step) * (over + under) + AROUND_RUNG, 0);
  for (let first = 0; first < sizes.length; first += 1)
    if (height === null || taken(sizes.slice(first)) <= height) return sizes.slice(first);
  return sizes.slice(-1);
}

/** The same spacing at smaller sizes: a strip of proofs at the outer margin. */
export function Ladder({ sheet }: { sheet: string }) {
  const { props } = useSession();
  const { size, smallestSize } = props;
  const height = useBench((state) => state.room?.height ?? null);
  const sizes = useMemo(
    () => planLadder(props, height === null ? null : height + (props.mode === 'reference' ? -TOLERANCE : UNDER_SHEET)),
    [props, height],
  );
  const named = smallestSize && smallestInUse(size, smallestSize) === smallestSize ? smallestSize : null;
  if (sizes.length === 0) return null;
  return (
    <div className={`${sheet} ${styles.ladder}`} role="group" aria-label="Smaller sizes">
      {sizes.map((step, place) => (
        <Rung key={`${step.value}${step.unit}`} step={step} smallest={named !== null && place === sizes.length - 1} />
      ))}
    </div>
  );
}

function Rung({ step, smallest }: { step: Size; smallest: boolean }) {
  const em = useCallback(
    (_: number, state: BenchState) => sizeInPx(step, pxPerMmNow(state.screen, window.devicePixelRatio)),
    [step],
  );
  return (
    <div className={styles.rung}>
      <LineCanvas kind="small" em={em} />
      <p className={styles.sheetLabel}>
        {withUnit(step.value, step.unit, 1)}
        {smallest && ', the smallest in use'}
      </p>
    </div>
  );
}

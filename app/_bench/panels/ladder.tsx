import { useCallback } from 'react';
import { withUnit } from '@/shared/text/number';
import { smallestInUse } from '@/shared/exercise/sizes';
import type { Size } from '@/shared/schemas/spacing';
import { useSession } from '../context';
import type { BenchProps } from '../props';
import { pxPerMmNow } from '../session/screen';
import type { BenchState } from '../session/state';
import { LineCanvas } from '../drawing/line-canvas';
import { setWidthOf } from '@/app/_line/frame';
import { ladderSizes, sizeInPx } from '../drawing/sizes';
import styles from '../bench.module.css';

export type LadderPlan = { readonly sizes: readonly Size[]; readonly place: 'margin' | 'below' };

/** Widest line that fits in the margin, and the widest that fits below the sheet, CSS px. */
const AT_MARGIN = 288;
const BELOW = 1000;

/**
 * The same spacing at smaller sizes: a strip of proofs at the outer margin, or below the sheet when the line is too
 * long for it.
 */
export function planLadder({
  pack,
  size,
  ladder,
  smallestSize,
}: Pick<BenchProps, 'pack' | 'size' | 'ladder' | 'smallestSize'>): LadderPlan {
  const widthInEm = setWidthOf(pack);
  const all = ladder ?? ladderSizes(size, smallestSize);
  const fitting = (width: number) => all.filter((step) => sizeInPx(step) * widthInEm <= width);
  const atMargin = fitting(AT_MARGIN);
  if (atMargin.length === all.length || (!ladder && atMargin.length >= 3)) return { sizes: atMargin, place: 'margin' };
  const below = fitting(BELOW);
  // A size named by the exercise is shown even where the line is cut off.
  return { sizes: ladder ?? below, place: 'below' };
}

export function Ladder({ sheet, plan }: { sheet: string; plan: LadderPlan }) {
  const { size, smallestSize } = useSession().props;
  const named = smallestSize && smallestInUse(size, smallestSize) === smallestSize ? smallestSize : null;
  if (plan.sizes.length === 0) return null;
  return (
    <div className={`${sheet} ${styles.ladder}`} role="group" aria-label="Smaller sizes">
      {plan.sizes.map((step, place) => (
        <Rung
          key={`${step.value}${step.unit}`}
          step={step}
          smallest={named !== null && place === plan.sizes.length - 1}
        />
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

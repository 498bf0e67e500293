import { useCallback, useMemo } from 'react';
import { withUnit } from '@/shared/text/number';
import type { Size } from '@/shared/schemas/spacing';
import { useSession } from '../context';
import { LineCanvas } from '../drawing/line-canvas';
import { setWidthOf } from '../drawing/set-width';
import { ladderSizes, sizeInPx } from '../drawing/sizes';
import styles from '../bench.module.css';

/** Widest line that hangs at the margin, CSS px; larger steps than this would be cut off there. */
const STRIP = 288;

/** The same spacing at smaller sizes, like a strip of proofs. */
export function Ladder({ sheet }: { sheet: string }) {
  const { pack, size, ladder } = useSession().props;
  const widthInEm = useMemo(() => setWidthOf(pack), [pack]);
  const sizes = useMemo(() => ladder ?? ladderSizes(size).filter((step) => sizeInPx(step) * widthInEm <= STRIP), [ladder, size, widthInEm]);
  if (sizes.length === 0) return null;
  return (
    <div className={`${sheet} ${styles.ladder}`} role="group" aria-label="Smaller sizes">
      {sizes.map((step) => <Rung key={`${step.value}${step.unit}`} step={step} />)}
    </div>
  );
}

function Rung({ step }: { step: Size }) {
  const em = useCallback(() => sizeInPx(step), [step]);
  return (
    <div className={styles.rung}>
      <LineCanvas kind="small" em={em} />
      <p className={styles.sheetLabel}>{withUnit(step.value, step.unit)}</p>
    </div>
  );
}

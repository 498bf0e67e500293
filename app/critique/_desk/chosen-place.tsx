'use client';
import { placeLetters } from '@/shared/outline/place-letters';
import type { Run } from '@/shared/critique/run';
import type { Pack } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';
import style from './desk.module.css';

/** Points down at the chosen gap, or spans the run with a bracket; it stands over the letters and never behind them. */
export function ChosenPlace({ pack, spacing, run }: { pack: Pack; spacing: Spacing; run: Run }) {
  const { gaps } = placeLetters(pack, spacing);
  const top = -Math.max(pack.vertical.ascender, pack.vertical.ascenderTop);
  const em = pack.unitsPerEm;
  const [from, to] = [gaps[run.first]!.centre, gaps[run.last]!.centre];
  if (from !== to)
    return <path className={style.chosen} d={`M${from} ${top + 0.06 * em}V${top}H${to}V${top + 0.06 * em}`} />;
  return (
    <path
      className={style.chosenOne}
      d={`M${from - 0.035 * em} ${top}H${from + 0.035 * em}L${from} ${top + 0.07 * em}Z`}
    />
  );
}

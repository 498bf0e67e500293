'use client';
import { LineDrawing, type GapMark, type GapTie } from '@/app/_ui/LineDrawing';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import type { DeskLine } from '@/shared/critique/desk';
import type { Run } from '@/shared/critique/run';
import { placeLetters } from '@/shared/outline/place-letters';
import type { Spacing } from '@/shared/schemas/spacing';
import { withUnit } from '@/shared/text/number';
import style from './desk.module.css';

type Props = {
  line: DeskLine['line']; pack: DeskLine['pack'];
  /** What is drawn: the setting as it was sent, or with a suggestion put in place. */
  spacing: Spacing;
  under: Spacing | null;
  underLabel: string | null;
  marks: GapMark[];
  ties: GapTie[];
  run: Run | null;
  choose: (run: Run) => void;
};

/** The line at its true size, bare; and large, where gaps can be pointed at and notes are tied to them. */
export function Sheet({ line, pack, spacing, under, underLabel, marks, ties, run, choose }: Props) {
  return (
    <div className={style.sheets}>
      <SheetFrame ground={line.ground} caption={<>True size, {withUnit(line.size.value, line.size.unit)}</>}>
        <div className={style.trueSize} tabIndex={0} role="group" aria-label="The line at its true size"><LineDrawing pack={pack} spacing={spacing} size={line.size} /></div>
      </SheetFrame>
      <SheetFrame ground={line.ground} caption={<>Large{underLabel && <>, with {underLabel} as outlines under it</>}</>}>
        <div className={style.large}>
          <LineDrawing
            pack={pack} spacing={spacing} under={under ?? undefined} marks={marks} ties={ties} label={null}
            behind={<Gaps pack={pack} spacing={spacing} run={run} choose={choose} />}
          />
        </div>
      </SheetFrame>
    </div>
  );
}

type GapsProps = Pick<Props, 'pack' | 'spacing' | 'run' | 'choose'>;

/** Points down at the chosen gap, or spans the run with a bracket; it stands over the letters and never behind them. */
function Chosen({ from, to, top, em }: { from: number; to: number; top: number; em: number }) {
  if (from !== to) return <path className={style.chosen} d={`M${from} ${top + 0.06 * em}V${top}H${to}V${top + 0.06 * em}`} />;
  return <path className={style.chosenOne} d={`M${from - 0.035 * em} ${top}H${from + 0.035 * em}L${from} ${top + 0.07 * em}Z`} />;
}

/** Where a gap can be pointed at: from the middle of one letter to the middle of the next. With shift the run reaches to it. */
function Gaps({ pack, spacing, run, choose }: GapsProps) {
  const { letters, gaps } = placeLetters(pack, spacing);
  const top = Math.max(pack.vertical.ascender, pack.vertical.ascenderTop);
  const middle = (index: number) => letters[index]!.x + letters[index]!.advance / 2;
  return (
    <>
      {run && <Chosen from={gaps[run.first]!.centre} to={gaps[run.last]!.centre} top={-top} em={pack.unitsPerEm} />}
      {gaps.map(({ index }) => (
        <rect
          key={index} className={style.gap} x={middle(index)} width={Math.max(1, middle(index + 1) - middle(index))} y={-top} height={top - pack.vertical.descender}
          onClick={(event) => choose(event.shiftKey && run ? { first: Math.min(run.first, index), last: Math.max(run.last, index) } : { first: index, last: index })}
        />
      ))}
    </>
  );
}

'use client';
import { type GapMark, type GapTie, LineDrawing } from '@/app/_line/LineDrawing';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import type { DeskLine, MovedPair } from '@/shared/critique/desk';
import type { Run } from '@/shared/critique/run';
import { placeLetters } from '@/shared/outline/place-letters';
import type { Spacing } from '@/shared/schemas/spacing';
import { withUnit } from '@/shared/text/number';
import { noLooks, type Looks } from '@/app/_line/looks';
import { ChosenPlace } from './chosen-place';
import { groundOf, Looked, showingOf } from './looks';
import { MovedMarks } from './moved-marks';
import style from './desk.module.css';

type Props = {
  line: Pick<DeskLine['line'], 'size' | 'ground'>;
  pack: DeskLine['pack'];
  /** What is drawn: the setting as it was sent, or with a suggestion put in place. */
  spacing: Spacing;
  under: Spacing | null;
  underLabel: string | null;
  marks: GapMark[];
  ties: GapTie[];
  looks?: Looks;
  /** Pairs that moved since the last round, pointed out under the large line. */
  moved?: readonly MovedPair[];
  run: Run | null;
  /** Where gaps can be pointed at. */
  choose?: (run: Run) => void;
};

/** The line at its true size, bare; and large, where gaps can be pointed at and notes are tied to them. */
export function Sheet({
  line,
  pack,
  spacing,
  under,
  underLabel,
  marks,
  ties,
  run,
  choose,
  looks = noLooks,
  moved = [],
}: Props) {
  const ground = groundOf(looks, line.ground);
  const show = showingOf(looks, run, pack.letters.length);
  const looked = <Looked pack={pack} spacing={spacing} looks={looks} run={run} />;
  return (
    <div className={style.sheets}>
      <SheetFrame ground={ground} caption={<>True size, {withUnit(line.size.value, line.size.unit)}</>}>
        <div className={style.trueSize} tabIndex={0} role="group" aria-label="The line at its true size">
          <LineDrawing pack={pack} spacing={spacing} size={line.size} show={show} behind={looked} />
        </div>
      </SheetFrame>
      <SheetFrame ground={ground} caption={<>Large{underLabel && <>, with {underLabel} as outlines under it</>}</>}>
        <div className={style.large}>
          <LineDrawing
            pack={pack}
            spacing={spacing}
            under={under ?? undefined}
            marks={marks}
            ties={ties}
            label={null}
            show={show}
            behind={
              <>
                {looked}
                <MovedMarks pack={pack} spacing={spacing} moved={moved} />
                {run && <ChosenPlace pack={pack} spacing={spacing} run={run} />}
                {choose && <Gaps pack={pack} spacing={spacing} run={run} choose={choose} />}
              </>
            }
          />
        </div>
      </SheetFrame>
    </div>
  );
}

type GapsProps = Pick<Props, 'pack' | 'spacing' | 'run'> & { choose: (run: Run) => void };

/** Where a gap can be pointed at: from the middle of one letter to the middle of the next. With shift the run reaches to it. */
function Gaps({ pack, spacing, run, choose }: GapsProps) {
  const { letters, gaps } = placeLetters(pack, spacing);
  const top = Math.max(pack.vertical.ascender, pack.vertical.ascenderTop);
  const middle = (index: number) => letters[index]!.x + letters[index]!.advance / 2;
  return (
    <>
      {gaps.map(({ index }) => (
        <rect
          key={index}
          className={style.gap}
          x={middle(index)}
          width={Math.max(1, middle(index + 1) - middle(index))}
          y={-top}
          height={top - pack.vertical.descender}
          onClick={(event) =>
            choose(
              event.shiftKey && run
                ? { first: Math.min(run.first, index), last: Math.max(run.last, index) }
                : { first: index, last: index },
            )
          }
        />
      ))}
    </>
  );
}

'use client';

import { LineDrawing } from '@/app/_line/LineDrawing';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import type { DeskLine, MovedPair } from '@/shared/critique/desk';
import type { PairFault } from '@/shared/critique/faults';
import { type Looks, noLooks } from '@/shared/line/looks';
import type { GapMark, GapTie } from '@/shared/line/shapes';
import { placeLetters } from '@/shared/outline/place-letters';
import type { NoteView } from '@/shared/schemas/note';
import type { Pack } from '@/shared/schemas/pack';
import type { Run, Spacing } from '@/shared/schemas/spacing';
import { withUnit } from '@/shared/text/number';
import style from './desk.module.css';
import { groundOf } from './looks';

type Props = {
  line: Pick<DeskLine['line'], 'size' | 'ground'>;
  pack: DeskLine['pack'];
  /** What is drawn: the spacing as it was sent, or with a suggestion applied. */
  spacing: Spacing;
  under: Spacing | null;
  underLabel: string | null;
  marks: GapMark[];
  ties: GapTie[];
  looks?: Looks;
  /** Pairs that moved since the last round, marked under the large line. */
  moved?: readonly MovedPair[];
  run: Run | null;
  /** Where gaps can be pointed at. */
  choose?: (run: Run) => void;
};

/** The line at its true size, unmarked; and large, where the marker points at gaps and notes are tied to them. */
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
  const seen = { looks, chosen: run?.first ?? null };
  return (
    <div className={style.sheets}>
      <SheetFrame ground={ground}>
        <div className={style.trueSize} tabIndex={0} role="group" aria-label="The line at its true size">
          <LineDrawing pack={pack} spacing={spacing} size={line.size} {...seen} />
        </div>
        <p className={style.sheetLabel}>
          {withUnit(line.size.value, line.size.unit)}, true size; large below
          {underLabel && <>, with {underLabel} as outlines under it</>}
        </p>
        <div className={style.large} tabIndex={0} role="group" aria-label="The line large">
          <LineDrawing
            pack={pack}
            spacing={spacing}
            under={under ?? undefined}
            marks={marks}
            ties={ties}
            label={null}
            {...seen}
            behind={
              <>
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

/**
 * Where a gap can be pointed at: from the middle of one letter to the middle of the next. With shift the run is
 * extended to it.
 */
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

/** Points down at the chosen gap, or spans the run with a bracket; it is above the letters and never behind them. */
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

/**
 * Arrows under the gaps that moved: pointing at each other where a pair was closed, apart where it was opened. Hollow
 * where it moved away from the suggestion or reference.
 */
function MovedMarks({ pack, spacing, moved }: { pack: Pack; spacing: Spacing; moved: readonly MovedPair[] }) {
  const { gaps } = placeLetters(pack, spacing);
  const em = pack.unitsPerEm;
  const y = Math.max(-pack.vertical.descender, 0.24 * em) - 0.05 * em;
  return moved.flatMap(({ place, moved: by, toward, reference }) => {
    if (place === null || by === 0) return [];
    const away = toward === 'away' || (toward === null && reference === 'away');
    const x = gaps[place]!.centre;
    return [
      <path
        key={place}
        className={style.movedMark}
        data-away={away || undefined}
        d={[-1, 1].map((side) => head(x, y, side, by < 0, em)).join('')}
      />,
    ];
  });
}

/** One arrow beside the middle of a gap, pointing towards it or away from it. */
function head(x: number, y: number, side: number, meets: boolean, em: number): string {
  const [near, far] = [0.012 * em, 0.062 * em];
  const [point, back] = meets ? [near, far] : [far, near];
  return `M${x + side * point} ${y}L${x + side * back} ${y - 0.03 * em}V${y + 0.03 * em}Z`;
}

/** Notes in the order of the margin: along the line, those on the whole line first. */
export const inMarginOrder = (notes: readonly NoteView[]): NoteView[] =>
  notes.toSorted(
    (one, other) => (one.fromPair ?? -1) - (other.fromPair ?? -1) || (one.toPair ?? -1) - (other.toPair ?? -1),
  );

/** A hairline from each pair or run that has notes, with their signs at its end. */
export function tiesOf(notes: readonly NoteView[]): GapTie[] {
  const ties = new Map<string, GapTie>();
  inMarginOrder(notes).forEach(({ fromPair, toPair }, index) => {
    if (fromPair === null || toPair === null) return;
    const key = `${fromPair}-${toPair}`;
    const known = ties.get(key);
    ties.set(key, { from: fromPair, to: toPair, sign: known ? `${known.sign}·${index + 1}` : String(index + 1) });
  });
  return [...ties.values()];
}

/** Wedges under the pairs that differ; a displaced letter has one at each side. */
export function marksOf(faults: readonly PairFault[]): GapMark[] {
  return faults.flatMap(({ first, last, fault, share }): GapMark[] => {
    const strength = share > 3 ? 3 : share > 2 ? 2 : 1;
    if (fault === 'left')
      return [
        { gap: first, fault: 'tight', strength },
        { gap: last, fault: 'wide', strength },
      ];
    if (fault === 'right')
      return [
        { gap: first, fault: 'wide', strength },
        { gap: last, fault: 'tight', strength },
      ];
    return [{ gap: first, fault: fault === 'wide' ? 'wide' : 'tight', strength }];
  });
}

/** The overlays of the line, in turn: the round before, each reference, what the line began from, the face's own spacing. */
export function overlaysOf({ previous, began, references, spacing }: DeskLine): { label: string; spacing: Spacing }[] {
  return [
    ...(previous ? [{ label: `round ${previous.round}, proof ${previous.proof}`, spacing: previous.spacing }] : []),
    ...references.map(({ author, slot, spacing: set }) => ({
      label: `the reference by ${author}${slot > 1 ? ` (take ${slot})` : ''}`,
      spacing: set,
    })),
    ...(began ? [{ label: 'what the line began from', spacing: began }] : []),
    { label: 'built-in', spacing: { tracking: 0, offsets: spacing.offsets.map(() => 0) } },
  ];
}

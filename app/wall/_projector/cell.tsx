'use client';
import { opposite } from '@/app/_line/inks';
import { classes } from '@/app/_ui/classes';
import type { GapCount, WallLine as Line, WallPack } from '@/shared/schemas/wall';
import { BESIDE } from './fit';
import type { Looking } from './looking';
import { RoomMarks } from './room-marks';
import { WallLine, type Over } from './wall-line';
import style from './projector.module.css';

export type Shown = WallPack & { line: Line };

type Props = {
  shown: Shown;
  looking: Looking;
  em: number;
  width: number;
  over: readonly Over[];
  /** Null while it is not shown where the room looks. */
  counts: readonly GapCount[] | null;
  fresh: boolean;
  renewed: boolean;
  choose: () => void;
  keep: (pair: number) => void;
};

/** One line of the wall under its sign. */
export function Cell({ shown, looking, em, width, over, counts, fresh, renewed, choose, keep }: Props) {
  const { line, pack } = shown;
  const ground = looking.looks.opposite ? opposite(shown.ground) : shown.ground;
  const drawing = { pack, spacing: line.spacing, em, width: Math.max(1, width - BESIDE), looks: looking.looks };
  const chosen = looking.chosen === line.key;
  return (
    <li
      className={classes('sheet', 'sheet-bare', `sheet-${ground}`, style.cell, chosen && style.chosen)}
      data-line={line.key}
    >
      <button
        type="button"
        className={style.sign}
        aria-pressed={chosen}
        onClick={choose}
        aria-label={`Line ${line.sign}${fresh ? ', new' : renewed ? ', set anew' : ''}`}
      >
        {line.sign}
        {(fresh || renewed) && <small>{fresh ? 'new' : 'anew'}</small>}
      </button>
      <div>
        <WallLine {...drawing} ground={ground} window={looking.window} over={over} sent={line.sent} />
        {counts && <RoomMarks {...drawing} counts={counts} keep={keep} />}
      </div>
    </li>
  );
}

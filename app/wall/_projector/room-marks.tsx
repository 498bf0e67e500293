'use client';
import { xOf } from '@/app/_line/frame';
import type { Looks } from '@/shared/line/looks';
import { gapName } from '@/shared/editing/pair-words';
import { placeLetters } from '@/shared/outline/place-letters';
import type { Pack } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';
import type { GapCount } from '@/shared/schemas/wall';
import { frameOf } from './wall-line';
import style from './projector.module.css';

type Props = {
  pack: Pack;
  spacing: Spacing;
  em: number;
  width: number;
  looks: Looks;
  counts: readonly GapCount[];
  keep: (pair: number) => void;
};

/** Height of the band under a line in which it is shown where the room looks. */
const bandOf = (em: number): number => Math.round(Math.max(34, 0.42 * em));

/** Where the room looks: under each gap a disc whose area grows with the number in it. */
export function RoomMarks({ pack, spacing, em, width, looks, counts, keep }: Props) {
  const height = bandOf(em);
  const frame = frameOf({ pack, spacing, em, width, looks });
  const { gaps } = placeLetters(pack, spacing);
  const most = Math.max(1, ...counts.map(({ count }) => count));
  return (
    <svg
      className={style.marks}
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={counts.map(({ pair, count }) => `${gapName(pack, pair)}: ${count}`).join('; ') || 'No points here'}
    >
      {counts.map(({ pair, count }) => {
        const radius = Math.max(11, (height / 2 - 1) * Math.sqrt(count / Math.max(most, 4)));
        const x = xOf(frame, gaps[pair]?.centre ?? 0);
        return (
          <g key={pair} className={style.mark} onClick={() => keep(pair)}>
            <circle cx={x} cy={height / 2} r={radius} />
            <text
              x={x}
              y={height / 2}
              fontSize={Math.max(14, Math.min(radius, 0.2 * em))}
              textAnchor="middle"
              dominantBaseline="central"
            >
              {count}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

import type { Pack } from '@/shared/schemas/pack';
import type { PlacedLine } from '@/shared/outline/place-letters';
import { number } from './svg-number';

/** A note's place: one gap (`from` = `to`) or a run of gaps, and the sign that stands at the end of the hairline. */
export type GapTie = { from: number; to: number; sign: string };

/** Hairlines from gaps to the lower edge of the sheet, a bracket where a note speaks of a run. */
export function LineTies({
  pack,
  line,
  ties,
  bottom,
}: {
  pack: Pack;
  line: PlacedLine;
  ties: GapTie[];
  bottom: number;
}) {
  const em = pack.unitsPerEm;
  const top = 0.05 * em;
  const signSize = 0.17 * em;
  return (
    <g>
      {ties.map((tie, index) => {
        const left = line.gaps[tie.from]!.centre;
        const right = line.gaps[tie.to]!.centre;
        const middle = (left + right) / 2;
        const bracket =
          tie.from === tie.to
            ? ''
            : `M${number(left)} ${number(top)}V${number(top + 0.04 * em)}H${number(right)}V${number(top)}`;
        return (
          <g key={`${tie.from}-${tie.to}-${index}`}>
            <path
              className="tie"
              d={`${bracket}M${number(middle)} ${number(bracket ? top + 0.04 * em : top)}V${number(bottom - signSize * 1.15)}`}
            />
            <text
              className="tie-sign"
              x={number(middle)}
              y={number(bottom - signSize * 0.15)}
              fontSize={number(signSize)}
              textAnchor="middle"
            >
              {tie.sign}
            </text>
          </g>
        );
      })}
    </g>
  );
}

import { useId } from 'react';
import { prepareLine } from '@/shared/measure/prepared-line';
import { pairWhite } from '@/shared/measure/drawing';
import { thinned } from '@/shared/geometry/thinned';
import { letterInside } from '@/shared/measure/letter-inside';
import { placeLetters } from '@/shared/outline/place-letters';
import type { Pack } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';
import { number } from '../_ui/svg-number';

type Props = { pack: Pack; spacing: Spacing; between?: boolean; inside?: boolean; open?: { from: number; to: number } };

/** White made visible, for the `behind` of a LineDrawing: between letters a warm diagonal hatch, inside them cool dots. */
export function LineWhite({ pack, spacing, between = true, inside = false, open }: Props) {
  const id = useId().replaceAll(/[^\w-]/g, '');
  const line = prepareLine(pack);
  const placed = placeLetters(pack, spacing);
  const em = pack.unitsPerEm;
  const step = em / 30;
  const toUnits = em / 1000;
  const outline = (points: number[], x: number) =>
    points.length === 0
      ? ''
      : `M${thinned(points, 0.7)
          .map((value, i) => Math.round(i % 2 === 0 ? x + value * toUnits : -value * toUnits))
          .join(' ')}Z`;
  const shown = open ?? { from: 0, to: placed.letters.length - 1 };
  const gaps = placed.gaps
    .slice(shown.from, shown.to)
    .map((gap) =>
      outline(
        pairWhite(line, gap.index, (gap.to - gap.from) / toUnits - pack.wordSpace[gap.index]! / toUnits),
        placed.letters[gap.index]!.x,
      ),
    );
  const insides = placed.letters
    .slice(shown.from, shown.to + 1)
    .map((letter) => outline(letterInside(line, letter.index), letter.x));
  return (
    <g>
      <defs>
        <pattern
          id={`${id}-hatch`}
          width={number(step)}
          height={number(step)}
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <rect className="hatch" width={number(step * 0.3)} height={number(step)} />
        </pattern>
        <pattern id={`${id}-dots`} width={number(step)} height={number(step)} patternUnits="userSpaceOnUse">
          <circle className="inside" cx={number(step / 2)} cy={number(step / 2)} r={number(step * 0.2)} />
        </pattern>
      </defs>
      {inside && <path d={insides.join('')} fill={`url(#${id}-dots)`} />}
      {between && <path d={gaps.join('')} fill={`url(#${id}-hatch)`} />}
    </g>
  );
}

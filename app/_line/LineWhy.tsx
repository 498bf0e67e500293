import { pairProfiles } from '@/shared/measure/drawing';
import { prepareLine } from '@/shared/measure/prepared-line';
import { placeLetters } from '@/shared/outline/place-letters';
import type { Pack } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';
import { number } from '../_ui/svg-number';

/** Both edges of one gap as the outline has them and as the measure sees them, for the `behind` of a LineDrawing. */
export function LineWhy({ pack, spacing, pair }: { pack: Pack; spacing: Spacing; pair: number }) {
  const x = placeLetters(pack, spacing).letters[pair]?.x ?? 0;
  const toUnits = pack.unitsPerEm / 1000;
  const total = pack.builtIn[pair]! / toUnits + spacing.tracking + spacing.offsets[pair]!;
  const { leftDrawn, rightDrawn, leftSeen, rightSeen } = pairProfiles(prepareLine(pack), pair, total);
  const open = (points: readonly number[]) =>
    points.length === 0
      ? ''
      : `M${points.map((value, i) => number(i % 2 === 0 ? x + value * toUnits : -value * toUnits)).join(' ')}`;
  return (
    <g className="why">
      <path className="why-drawn" d={[...leftDrawn, ...rightDrawn].map(open).join('')} />
      <path className="why-seen" d={open(leftSeen) + open(rightSeen)} />
    </g>
  );
}

import type { Pack } from '@/shared/schemas/pack';
import type { PlacedLine } from '@/shared/outline/place-letters';
import { number } from './svg-number';

/** How a gap looks beside the others. `strength` 1 is slight, 2 clear, 3 strong. */
export type GapMark = { gap: number; look: 'tight' | 'loose'; strength: 1 | 2 | 3 };

/** A pair of wedges under a gap: their points meet where it is too tight and turn away where it is too loose. */
export function LineMarks({ pack, line, marks }: { pack: Pack; line: PlacedLine; marks: GapMark[] }) {
  const em = pack.unitsPerEm;
  const y = Math.max(-pack.vertical.descender, 0.24 * em) + 0.05 * em;
  return (
    <path
      className="mark"
      d={marks
        .map((mark) => wedges(line.gaps[mark.gap]!.centre, y, (0.03 + 0.02 * mark.strength) * em, mark.look))
        .join('')}
    />
  );
}

function wedges(x: number, y: number, size: number, look: GapMark['look']): string {
  const apart = size * 0.25;
  // From the gap's middle outwards: the point first when the letters press in, the back first when they stand apart.
  const [point, back] = look === 'tight' ? [apart, apart + size] : [apart + size, apart];
  return [-1, 1]
    .map(
      (side) =>
        `M${number(x + side * point)} ${number(y)}L${number(x + side * back)} ${number(y - size * 0.7)}V${number(y + size * 0.7)}Z`,
    )
    .join('');
}

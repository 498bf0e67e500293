'use client';
import { placeLetters } from '@/shared/outline/place-letters';
import type { MovedPair } from '@/shared/critique/desk';
import type { Pack } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';
import style from './desk.module.css';

/** Arrows under the gaps that moved: heads that meet where a pair was tightened, that part where it was opened. Hollow where it went away from what was wanted. */
export function MovedMarks({ pack, spacing, moved }: { pack: Pack; spacing: Spacing; moved: readonly MovedPair[] }) {
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

/** A head beside the middle of a gap: its point towards it, or away from it. */
function head(x: number, y: number, side: number, meets: boolean, em: number): string {
  const [near, far] = [0.012 * em, 0.062 * em];
  const [point, back] = meets ? [near, far] : [far, near];
  return `M${x + side * point} ${y}L${x + side * back} ${y - 0.03 * em}V${y + 0.03 * em}Z`;
}

import { apparentGapAt, offsetForGap, prepareLine } from '@/shared/measure';
import { measureLine } from '@/shared/scoring';
import type { Pack } from '@/shared/schemas/pack';
import type { PracticeKind } from '@/shared/schemas/practice';
import type { SideKind } from '@/shared/schemas/measure';
import { median } from '@/shared/stats/median';
import type { PerMille } from '@/shared/units';

/** No offset of an even line goes further than this, so that a strange pair does not tear it apart. */
const FURTHEST = 200;

/** Offsets that make a line even by the measure: each gap as open as the middle of its own kind. Whole thousandths. */
export function evenOffsets(pack: Pack): PerMille[] {
  const line = prepareLine(pack);
  const gaps = line.pairs.map((pair, index) => apparentGapAt(line, index, pair.builtIn));
  return line.pairs.map(({ group }, index) => {
    const centre = median(gaps.filter((_, other) => line.pairs[other]?.group === group));
    const offset = offsetForGap(line, index, centre, 0);
    return offset === null ? 0 : Math.max(-FURTHEST, Math.min(FURTHEST, Math.floor(offset + 0.5))) + 0;
  });
}

/** Gaps of a line between neighbouring letters (never a word space) that are of a kind. */
export function gapsOfKind(pack: Pack, kind: PracticeKind): number[] {
  const measured = measureLine(
    pack,
    { tracking: 0, offsets: pack.builtIn.map(() => 0) },
    { size: { value: 48, unit: 'px' }, ground: 'light' },
  );
  return measured.pairs
    .filter(({ wordSpace, sides }) => wordSpace === 0 && (kind === 'any' || matches([sides.left, sides.right], kind)))
    .map(({ index }) => index);
}

function matches(sides: readonly SideKind[], kind: PracticeKind): boolean {
  if (kind === 'straight') return sides.every((side) => side === 'straight' || side === 'arched');
  if (kind === 'round') return sides.includes('round') && !sides.some(isOpen);
  return sides.some(isOpen);
}

const isOpen = (side: SideKind): boolean => side === 'open' || side === 'slanted-in' || side === 'slanted-out';

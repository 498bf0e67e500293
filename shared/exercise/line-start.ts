import { apparentGapAt, offsetForGap, prepareLine } from '@/shared/measure';
import type { Pack } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';
import type { MadeStart } from '@/shared/schemas/specimen';
import { median } from '@/shared/stats/median';

/** As far as a start may take a gap from the face's own, 1/1000 em. */
const most = 400;

/**
 * A spacing that is wrong on purpose, for students to repair. `one-gap`: a single gap off by an amount. `tight`: all
 * gaps closer alike, as tracking. `area`: every gap between letters holds as much white as the middle one of the line,
 * by area alone, which an eye does not accept. In 1/1000 em over the built-in values.
 * @throws RangeError for a gap that the line does not have.
 */
export function madeStart(pack: Pack, asked: MadeStart): Spacing {
  const untouched = { tracking: 0, offsets: pack.builtIn.map(() => 0) };
  switch (asked.kind) {
    case 'one-gap': {
      if (asked.gap >= untouched.offsets.length)
        throw new RangeError(`There is no gap ${asked.gap + 1} in “${pack.text}”.`);
      return { ...untouched, offsets: untouched.offsets.map((offset, gap) => (gap === asked.gap ? asked.by : offset)) };
    }
    case 'tight':
      return { ...untouched, tracking: -asked.by };
    case 'area':
      return { ...untouched, offsets: fromArea(pack) };
  }
}

function fromArea(pack: Pack): number[] {
  const line = prepareLine(pack);
  const gaps = line.pairs.flatMap((pair, index) =>
    pair.wordSpace > 0 ? [] : [apparentGapAt(line, index, pair.builtIn)],
  );
  if (gaps.length === 0) return pack.builtIn.map(() => 0);
  const middle = median(gaps);
  return line.pairs.map((pair, index) => {
    if (pair.wordSpace > 0) return 0;
    const offset = offsetForGap(line, index, middle, 0) ?? 0;
    return Math.max(-most, Math.min(most, Math.floor(offset + 0.5))) + 0;
  });
}

/** Whether a spacing is still what the line began from. */
export const isUntouched = (spacing: Spacing, start: Spacing): boolean =>
  spacing.tracking === start.tracking &&
  spacing.offsets.length === start.offsets.length &&
  spacing.offsets.every((offset, gap) => offset === start.offsets[gap]);

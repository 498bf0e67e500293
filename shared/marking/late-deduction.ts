import { counted, withUnit } from '@/shared/text/number';

/** A proof that came after its due instant: days begun since, and the percent of the mark that the late rule takes, at most 100. */
export type Late = { startedDays: number; deduct: number };

/** The total once the late rule has been applied, with a sentence that shows it; a proof in time keeps its total and gets no sentence. */
export function afterLateRule(
  percent: number | null,
  late: Late | null,
): { percent: number | null; said: string | null } {
  if (late === null) return { percent, said: null };
  const days = `${counted(late.startedDays, 'day')} late, every begun day counted`;
  if (late.deduct === 0) return { percent, said: `${days}; the late rule takes nothing off.` };
  const takes = `the late rule takes ${withUnit(late.deduct, '%', 2)} of the mark`;
  if (percent === null) return { percent, said: `${days}; ${takes}.` };
  const after = (percent * (100 - late.deduct)) / 100;
  return {
    percent: after,
    said: `${days}; ${takes}: ${withUnit(percent, '%', 2)} × ${withUnit(100 - late.deduct, '%', 2)} = ${withUnit(after, '%', 2)}.`,
  };
}

import { Temporal } from 'temporal-polyfill';
import { lateRuleOf } from '@/lib/rows/exercise';
import { meantTime } from '@/lib/exercise/local-time';
import type { CopiedCourse } from '@/lib/data/course-copy';
import type { LateRule } from '@/shared/schemas/exercise';

type Round = CopiedCourse['exercises'][number]['rounds'][number];
export type MovedRound = {
  opensLocal: string | null;
  opensAt: Date | null;
  dueLocal: string | null;
  dueAt: Date | null;
  lateRule: LateRule;
  remarks: string[];
};

/**
 * A round's dates moved by whole days on the calendar of the course's zone, so that 18:00 stays 18:00 over a change of
 * the clocks; or none at all (`days` null). A rule with a last date for late proofs loses it with the due date, and takes them always.
 */
export function movedDates(round: Round, days: number | null, zone: string): MovedRound {
  const rule = lateRuleOf(round);
  if (days === null) {
    const lateRule =
      rule.accept === 'until' ? { ...rule, accept: 'always' as const, untilLocal: null, untilAt: null } : rule;
    return { opensLocal: null, opensAt: null, dueLocal: null, dueAt: null, lateRule, remarks: [] };
  }
  const moved = (local: string | null, use: 'opens' | 'due') =>
    local === null ? null : meantTime(later(local, days), zone, use);
  const [opens, due, until] = [
    moved(round.opensLocal, 'opens'),
    moved(round.dueLocal, 'due'),
    moved(rule.untilLocal, 'due'),
  ];
  return {
    opensLocal: opens?.local ?? null,
    opensAt: opens?.at ?? null,
    dueLocal: due?.local ?? null,
    dueAt: due?.at ?? null,
    lateRule: { ...rule, untilLocal: until?.local ?? null, untilAt: until?.at.toISOString() ?? null },
    remarks: [opens, due, until].flatMap((time) => time?.remark ?? []),
  };
}

const later = (local: string, days: number): string =>
  Temporal.PlainDateTime.from(local).add({ days }).toString({ smallestUnit: 'minute' });

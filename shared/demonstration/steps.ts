import { OFFSET_LIMIT } from '@/shared/editing/document';
import type { DemonstrationStep, DemonstrationSteps } from '@/shared/schemas/demonstration';
import type { Spacing } from '@/shared/schemas/spacing';

/** What one step changes, from the spacing before it to the one after. Both are of the same line. */
export function stepBetween(
  before: Spacing,
  after: Spacing,
  run: [number, number] | null,
  reason = '',
): DemonstrationStep {
  const moves = after.offsets.flatMap((offset, pair): [number, number][] =>
    offset === before.offsets[pair] ? [] : [[pair, offset - (before.offsets[pair] ?? 0)]],
  );
  return { tracking: after.tracking - before.tracking, moves, run, reason };
}

/** The spacing after a step. */
export function applyStep(before: Spacing, step: DemonstrationStep): Spacing {
  const offsets = [...before.offsets];
  for (const [pair, by] of step.moves) offsets[pair] = (offsets[pair] ?? 0) + by;
  return { tracking: before.tracking + step.tracking, offsets };
}

/** Every spacing of a demonstration: how it began, then after each step. */
export function spacingsOf({ start, steps }: DemonstrationSteps): Spacing[] {
  const all = [start];
  for (const step of steps) all.push(applyStep(all[all.length - 1]!, step));
  return all;
}

/** What is wrong with a recording on a line of `pairs` pairs, in words; null when it fits. */
export function misfitOf(recorded: DemonstrationSteps, pairs: number): string | null {
  if (recorded.start.offsets.length !== pairs)
    return `This line has ${pairs} gaps, and the demonstration begins with ${recorded.start.offsets.length}.`;
  const far = recorded.steps
    .flatMap(({ moves, run }) => [...moves.map(([pair]) => pair), ...(run ?? [])])
    .find((pair) => pair >= pairs);
  if (far !== undefined) return `There is no gap ${far + 1} in a line of ${pairs}.`;
  const beyond = spacingsOf(recorded)
    .flatMap(({ tracking, offsets }) => [tracking, ...offsets])
    .find((value) => Math.abs(value) > OFFSET_LIMIT);
  return beyond === undefined
    ? null
    : `A step leads to ${beyond}; offsets stay within ±${OFFSET_LIMIT} thousandths of an em.`;
}

/** The pairs that lie between the first and the last that changed; null when none did. */
export function changedRun(before: Spacing, after: Spacing): [number, number] | null {
  const changed = after.offsets.flatMap((offset, pair) => (offset === before.offsets[pair] ? [] : [pair]));
  return changed.length === 0 ? null : [changed[0]!, changed[changed.length - 1]!];
}

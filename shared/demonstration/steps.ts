import { OFFSET_LIMIT } from '@/shared/editing/document';
import { pairLetters } from '@/shared/editing/pair-words';
import type { DemonstrationStep, DemonstrationSteps } from '@/shared/schemas/demonstration';
import type { Pack } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';
import { counted, numberText } from '@/shared/text/number';

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

/** What a step did, in words: `“V” and “a” 12 closer`, `3 gaps from “V” to “e” 5 wider each`, `tracking 10 closer`. */
export function stepWords(pack: Pack, { tracking, moves, run }: DemonstrationStep): string {
  const sentences: string[] = [];
  if (tracking !== 0) sentences.push(`tracking ${how(tracking)}`);
  const amounts = [...new Set(moves.map(([, by]) => by))];
  if (moves.length > 0 && moves.length <= 2)
    sentences.push(...moves.map(([pair, by]) => `${pairName(pack, pair)} ${how(by)}`));
  else if (moves.length > 0)
    sentences.push(
      `${counted(moves.length, 'gap')} ${span(pack, moves[0]![0], moves[moves.length - 1]![0])}${amounts.length === 1 ? ` ${how(amounts[0]!)} each` : ''}`,
    );
  if (sentences.length === 0)
    return run
      ? `${run[0] === run[1] ? pairName(pack, run[0]) : span(pack, run[0], run[1])}, left as it is`
      : 'the line, left as it is';
  return sentences.join(', ');
}

const how = (by: number): string => `${numberText(Math.abs(by))} ${by < 0 ? 'closer' : 'wider'}`;

function pairName(pack: Pack, pair: number): string {
  const { left, right, wordSpace } = pairLetters(pack, pair);
  return `${wordSpace ? 'the word space between ' : ''}“${left}” and “${right}”`;
}

const span = (pack: Pack, from: number, to: number): string =>
  `from “${pairLetters(pack, from).left}” to “${pairLetters(pack, to).right}”`;

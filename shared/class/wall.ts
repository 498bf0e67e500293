import type { Spacing } from '@/shared/schemas/spacing';
import { median } from '@/shared/stats/median';

/**
 * The spacing whose every total is the median of the lines' totals for that pair. Built-in is the same for all, so the
 * median of tracking + offset is taken. Whole thousandths, halves upwards. No person set it: it may be uneven where
 * each line is even.
 * @throws RangeError without lines, or when they have different numbers of pairs.
 */
export function medianSpacing(lines: readonly Spacing[]): Spacing {
  const pairs = lines[0]?.offsets.length ?? 0;
  const odd = lines.find(({ offsets }) => offsets.length !== pairs);
  if (odd)
    throw new RangeError(
      `A median needs lines of one length; one has ${pairs} pairs and another ${odd.offsets.length}.`,
    );
  if (lines.length === 0) throw new RangeError('The median of no lines was asked for.');
  const offsets = Array.from({ length: pairs }, (_, pair) =>
    Math.floor(median(lines.map(({ tracking, offsets: set }) => tracking + set[pair]!)) + 0.5),
  );
  return { tracking: 0, offsets };
}

/**
 * Keeps lines in their places: missing ones are dropped, new ones follow the last, in the order of `keys` (which is
 * random). Nothing in view moves.
 */
export function placed(before: readonly string[], keys: readonly string[]): string[] {
  const there = new Set(keys);
  const kept = before.filter((key) => there.has(key));
  const known = new Set(kept);
  return [...kept, ...keys.filter((key) => !known.has(key))];
}

type Line = { key: string; version: number; spacing: Spacing };

/**
 * The new lines, with the very objects of before wherever a setting is the same: what did not change is not drawn
 * again.
 */
export function sameAgain<Of extends Line>(before: readonly Of[], now: readonly Of[]): Of[] {
  const was = new Map(before.map((line) => [line.key, line]));
  return now.map((line) => {
    const known = was.get(line.key);
    return known && known.version === line.version && sameSpacing(known.spacing, line.spacing)
      ? { ...line, spacing: known.spacing }
      : line;
  });
}

function sameSpacing(one: Spacing, other: Spacing): boolean {
  return (
    one.tracking === other.tracking &&
    one.offsets.length === other.offsets.length &&
    one.offsets.every((offset, pair) => offset === other.offsets[pair])
  );
}

/**
 * For each key the fewest of its first signs, two or more, that distinguish it from all others. Keys are all different.
 */
export function signsOf(keys: readonly string[]): Map<string, string> {
  return new Map(
    keys.map((key) => {
      let length = 2;
      while (length < key.length && keys.some((other) => other !== key && other.startsWith(key.slice(0, length))))
        length += 1;
      return [key, key.slice(0, length)];
    }),
  );
}

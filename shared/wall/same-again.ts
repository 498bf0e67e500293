import type { Spacing } from '@/shared/schemas/spacing';

type Line = { key: string; version: number; spacing: Spacing };

/** The new lines, with the very objects of before wherever a setting is the same: what did not change is not drawn again. */
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

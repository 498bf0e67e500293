import { evenOffsets, gapsOfKind } from '@/shared/practice/even-line';
import type { Pack } from '@/shared/schemas/pack';
import type { PracticeKind } from '@/shared/schemas/practice';
import type { Spacing } from '@/shared/schemas/spacing';

/** One question: a line with one fault, and the same line even. */
export type Trial = {
  readonly pack: Pack;
  readonly even: Spacing;
  readonly faulty: Spacing;
  readonly gap: number;
  /** Above 0 the gap was opened. Whole 1/1000 em. */
  readonly fault: number;
  /** Whether the even one stands above. */
  readonly evenAbove: boolean;
};

/** Draws a line that has a gap of the kind, and makes a fault of the size in it, wider or tighter. */
export function drawTrial(
  packs: readonly Pack[],
  kind: PracticeKind,
  level: number,
  random: () => number,
): Trial | null {
  const possible = packs.filter((pack) => gapsOfKind(pack, kind).length > 0);
  const pack = pick(possible, random);
  const gap = pack && pick(gapsOfKind(pack, kind), random);
  if (!pack || gap === undefined) return null;
  const offsets = evenOffsets(pack);
  const fault = Math.max(1, Math.round(level)) * (random() < 0.5 ? 1 : -1);
  return {
    pack,
    gap,
    fault,
    even: { tracking: 0, offsets },
    faulty: { tracking: 0, offsets: offsets.map((offset, pair) => (pair === gap ? offset + fault : offset)) },
    evenAbove: random() < 0.5,
  };
}

function pick<T>(list: readonly T[], random: () => number): T | undefined {
  return list[Math.floor(random() * list.length)];
}

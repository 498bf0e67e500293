import { useEffect, useSyncExternalStore } from 'react';
import { prepareLine } from '@/shared/measure/prepared-line';
import type { Pack } from '@/shared/schemas/pack';
import { tellsAtLeast } from '@/shared/exercise/what-the-bench-tells';
import type { BenchProps } from './props';
import type { UsualLine } from './usual';

const known = new WeakMap<Pack, UsualLine>();
const listeners = new Set<() => void>();

/** What is usual, where the bench may show evenness; null until it is computed. Its numbers are fetched only then. */
export function useUsual({ pack, tells }: Pick<BenchProps, 'pack' | 'tells'>): UsualLine | null {
  const asked = tellsAtLeast(tells, 'evenness');
  useEffect(() => {
    // If the numbers can't be fetched, nothing is shown about what is usual.
    if (asked) fetchUsual(pack).catch(() => undefined);
  }, [asked, pack]);
  const now = () => (asked ? usualNow(pack) : null);
  return useSyncExternalStore(onUsual, now, now);
}

export const usualNow = (pack: Pack): UsualLine | null => known.get(pack) ?? null;

/** Notifies when what is usual for a line is available. */
export function onUsual(listener: () => void): () => void {
  listeners.add(listener);
  return () => void listeners.delete(listener);
}

async function fetchUsual(pack: Pack): Promise<void> {
  const { faceOf, usualRanges } = await import('@/shared/usual-range/usual-range');
  if (known.has(pack)) return;
  const line = prepareLine(pack);
  const look = faceOf(pack, line.face)?.features ?? null;
  known.set(pack, {
    ranges: usualRanges(line),
    stemGap: look?.stemGap ?? null,
    referenceGap: look?.unit ?? null,
  });
  for (const tell of listeners) tell();
}

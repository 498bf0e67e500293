import { systemCaller } from '@/lib/access/actor';
import { bus } from '@/lib/live/announce';
import type { PhoneState } from '@/shared/schemas/wall';
import { watchPointing } from './show-pointing';

type Shared = { stale: boolean; readAt: number; reading: Promise<PhoneState>; stop: () => void };
type Shown = { code: string; wallId: string; roundId: string };

const shared = new Map<string, Shared>();
/** In ms. Whatever was missed by the bus is found after this; a wall that nobody asks about is forgotten. */
const lasts = 10_000;

/**
 * The present state of a wall for its phones, read from the database once for all of them: sixty phones that are told of
 * one change ask one question.
 */
export function phonesTogether({ code, wallId, roundId }: Shown): Promise<PhoneState> {
  const there = shared.get(code);
  if (there && !there.stale && Date.now() - there.readAt < lasts) return there.reading;
  there?.stop();
  const entry: Shared = {
    stale: false,
    readAt: Date.now(),
    stop: () => {},
    reading: watchPointing(systemCaller('telling the phones at a wall'), { code }),
  };
  entry.stop = bus().listen([`wall:${wallId}`, `round:${roundId}`], () => {
    entry.stale = true;
  });
  // A failure is for those who asked now, and not for the next.
  entry.reading.catch(() => {
    entry.stale = true;
  });
  shared.set(code, entry);
  forgetOld();
  return entry.reading;
}

function forgetOld(): void {
  for (const [code, { readAt, stop }] of shared) {
    if (Date.now() - readAt < 3 * lasts) continue;
    stop();
    shared.delete(code);
  }
}

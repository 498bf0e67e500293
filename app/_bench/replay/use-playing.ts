import { useEffect, useSyncExternalStore } from 'react';
import type { DemonstrationStep } from '@/shared/schemas/demonstration';
import { useBench, useSession } from '../context';
import { paceOf, reducedMotion, replayTo } from './replay';

/** Goes on by itself while it plays; `ended` is called once the last step has stood its time. */
export function usePlaying(steps: readonly DemonstrationStep[], least: number, ended: () => void): void {
  const session = useSession();
  const at = useBench((state) => state.replayed);
  const playing = useBench((state) => state.playing);
  useEffect(() => {
    if (!playing || at === null) return;
    const timer = setTimeout(
      () => (at >= steps.length ? ended() : replayTo(session, steps, at + 1)),
      paceOf(steps[at - 1], least),
    );
    return () => clearTimeout(timer);
  }, [session, steps, least, ended, at, playing]);
}

/** Whether the system asks for less motion: then nothing plays by itself. */
export function useReducedMotion(): boolean {
  return useSyncExternalStore(
    (changed) => {
      const asked = reducedMotion();
      asked.addEventListener('change', changed);
      return () => asked.removeEventListener('change', changed);
    },
    () => reducedMotion().matches,
    () => false,
  );
}

import { useEffect, useSyncExternalStore } from 'react';
import { changedRun, stepBetween } from '@/shared/demonstration/steps';
import { spacingOf } from '@/shared/editing/document';
import type { DemonstrationStep } from '@/shared/schemas/demonstration';
import { useBench, useSession } from '../context';
import type { BenchSession } from '../session/session';
import type { BenchState } from '../session/state';

/** Shows the line as it was after `at` steps, and marks the pairs changed by the last of them. */
export function replayTo(session: BenchSession, steps: readonly DemonstrationStep[], at: number): void {
  const to = Math.max(0, Math.min(steps.length, at));
  const run = steps[to - 1]?.run;
  if (run) {
    session.choose(run[0]);
    session.choose(run[1], true);
  }
  session.store.set({ replayed: to, shown: 'mine' });
}

/**
 * Starts going through this sitting again, or returns to its present state. Plays unless the system asks for less
 * motion.
 */
export function toggleWatching(session: BenchSession): void {
  const { replayed, history } = session.store.get();
  if (replayed !== null) return stopReplay(session);
  if (history.cursor < 2) return;
  replayTo(session, [], 0);
  session.store.set({ playing: !reducedMotion().matches });
}

const reducedMotion = (): MediaQueryList => window.matchMedia('(prefers-reduced-motion: reduce)');

export function stopReplay(session: BenchSession): void {
  session.store.set({ replayed: null, playing: false });
}

/** The steps of this sitting, as they would be recorded. */
export function stepsOfSitting({ history }: Pick<BenchState, 'history'>): DemonstrationStep[] {
  const spacings = history.steps.slice(0, history.cursor + 1).map(spacingOf);
  return spacings
    .slice(1)
    .map((after, index) => stepBetween(spacings[index]!, after, changedRun(spacings[index]!, after)));
}

/** How long a step is shown during play, ms: time to read its reason, and far from three changes a second. */
function paceOf(step: DemonstrationStep | undefined, least: number): number {
  return Math.min(15_000, least + 55 * (step?.reason.length ?? 0));
}

/** Advances while it plays; `ended` is called once the last step has been shown for its time. */
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

/** Whether the system asks for less motion: then nothing plays without being asked. */
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

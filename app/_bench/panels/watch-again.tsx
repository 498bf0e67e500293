import { useEffect } from 'react';
import { useBench, useSession } from '../context';
import styles from '../bench.module.css';

const STEP_MS = 800;

/** Goes through the steps of this sitting from the beginning, slowly, without changing anything. */
export function WatchAgain() {
  const session = useSession();
  const steps = useBench((state) => state.history.cursor);
  const at = useBench((state) => state.replayed);
  useEffect(() => {
    if (at === null) return;
    const { store } = session;
    const timer = setTimeout(() => {
      const { history } = store.get();
      if (at >= history.cursor) return store.set({ replayed: null });
      const changed = history.steps[at + 1]?.offsets.findIndex((offset, pair) => offset !== history.steps[at]?.offsets[pair]) ?? -1;
      if (changed >= 0) session.choose(changed);
      store.set({ replayed: at + 1 });
    }, STEP_MS);
    return () => clearTimeout(timer);
  }, [session, at]);
  if (steps < 2 && at === null) return null;
  return (
    <span className={styles.watch}>
      <button type="button" className="button button-small" onClick={() => session.store.set({ replayed: at === null ? 0 : null })}>{at === null ? 'Watch it again' : 'Stop'}</button>
      {at !== null && <span className={styles.hint}>step {at} of {steps}</span>}
    </span>
  );
}

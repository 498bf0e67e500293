import { useCallback, useMemo } from 'react';
import { useBench, useSession } from '../context';
import { replayTo, stepsOfSitting, stopReplay } from '../replay/replay';
import { ReplayControls } from '../replay/replay-controls';
import { usePlaying, useReducedMotion } from '../replay/use-playing';
import styles from '../bench.module.css';

const STEP_MS = 800;

/** Goes through the steps of this sitting from the beginning, slowly, without changing anything. */
export function WatchAgain() {
  const steps = useBench((state) => state.history.cursor);
  const at = useBench((state) => state.replayed);
  const session = useSession();
  const still = useReducedMotion();
  if (steps < 2 && at === null) return null;
  function begin() {
    replayTo(session, [], 0);
    session.store.set({ playing: !still });
  }
  return (
    <span className={styles.watch}>
      <button type="button" className="button button-small" data-watch onClick={at === null ? begin : () => stopReplay(session)}>{at === null ? 'Watch it again' : 'Back to mine'}</button>
      {at !== null && <Watching />}
    </span>
  );
}

function Watching() {
  const session = useSession();
  const history = useBench((state) => state.history);
  const steps = useMemo(() => stepsOfSitting({ history }), [history]);
  usePlaying(steps, STEP_MS, useCallback(() => stopReplay(session), [session]));
  return <ReplayControls steps={steps} />;
}

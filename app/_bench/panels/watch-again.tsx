import { useCallback, useMemo } from 'react';
import { useBench, useSession } from '../context';
import { stepsOfSitting, stopReplay, toggleWatching } from '../replay/replay';
import { ReplayControls } from '../replay/replay-controls';
import { usePlaying } from '../replay/use-playing';
import styles from '../bench.module.css';

const STEP_MS = 800;

/** Goes through the steps of this sitting from the beginning, slowly, without changing anything. */
export function WatchAgain() {
  const steps = useBench((state) => state.history.cursor);
  const at = useBench((state) => state.replayed);
  const session = useSession();
  if (steps < 2 && at === null) return null;
  return (
    <span className={styles.watch}>
      <button type="button" className="button button-small" onClick={() => toggleWatching(session)}>
        {at === null ? 'Watch it again' : 'Back to mine'}
      </button>
      {at !== null && <Watching />}
    </span>
  );
}

function Watching() {
  const session = useSession();
  const history = useBench((state) => state.history);
  const steps = useMemo(() => stepsOfSitting({ history }), [history]);
  usePlaying(
    steps,
    STEP_MS,
    useCallback(() => stopReplay(session), [session]),
  );
  return <ReplayControls steps={steps} />;
}

import { useCallback, useMemo } from 'react';
import { stepWords } from '@/shared/demonstration/steps';
import type { DemonstrationStep } from '@/shared/schemas/demonstration';
import benchStyles from '../bench.module.css';
import { useBench, useSession } from '../context';
import { replayTo, stepsOfSitting, stopReplay, toggleWatching, usePlaying, useReducedMotion } from './replay';
import styles from './replay.module.css';

/** Forward, back and play, with what the step did and why; both are also spoken. */
export function ReplayControls({ steps }: { steps: readonly DemonstrationStep[] }) {
  const session = useSession();
  const at = useBench((state) => state.replayed) ?? 0;
  const playing = useBench((state) => state.playing);
  const still = useReducedMotion();
  const step = steps[at - 1];
  const go = (to: number) => () => {
    session.store.set({ playing: false });
    replayTo(session, steps, to);
  };
  function play() {
    if (!playing && at >= steps.length) replayTo(session, steps, 0);
    session.store.set({ playing: !playing });
  }
  return (
    <div className={styles.controls}>
      <p className={styles.buttons}>
        <button type="button" className="button button-small" disabled={at === 0} onClick={go(at - 1)}>
          Step back
        </button>
        <button type="button" className="button button-small" disabled={at >= steps.length} onClick={go(at + 1)}>
          Step forward
        </button>
        {!still && (
          <button type="button" className="button button-small" onClick={play}>
            {playing ? 'Stop' : at >= steps.length ? 'Play again' : 'Play'}
          </button>
        )}
        <span className={styles.count}>
          step {at} of {steps.length}
        </span>
      </p>
      <div aria-live="polite" className={styles.message}>
        <p className={styles.moved}>
          {step ? `${capital(stepWords(session.props.pack, step))}.` : 'How the line was at the beginning.'}
        </p>
        {step?.reason && <p className={styles.reason}>{step.reason}</p>}
      </div>
    </div>
  );
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

const STEP_MS = 800;

/** Goes through the steps of this sitting from the beginning, slowly, without changing anything. */
export function WatchAgain() {
  const steps = useBench((state) => state.history.cursor);
  const at = useBench((state) => state.replayed);
  const session = useSession();
  if (steps < 2 && at === null) return null;
  return (
    <span className={benchStyles.watch}>
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

import { useEffect, useId, useState, useSyncExternalStore } from 'react';
import { isFull, type Recording } from '@/shared/demonstration/recording';
import { stepWords } from '@/shared/demonstration/steps';
import { STEP_LIMIT, STEP_REASON_LIMIT } from '@/shared/schemas/demonstration';
import { counted } from '@/shared/text/number';
import bench from '../bench.module.css';
import { useSession } from '../context';
import type { BenchProps } from '../props';
import { openRecorder, type Recorder } from './recorder';
import styles from './recording.module.css';

/** Records a demonstration while the line is being set, with reasons. */
export function RecordPanel({ demonstrations }: { demonstrations: NonNullable<BenchProps['demonstrations']> }) {
  const session = useSession();
  const [recorder] = useState(() => openRecorder(session, demonstrations));
  const { recording, stored, deviceStores } = useSyncExternalStore(
    recorder.store.subscribe,
    recorder.store.get,
    recorder.store.get,
  );
  useEffect(() => recorder.attach(), [recorder]);
  return (
    <section className={`${bench.panel} ${bench.panelWide}`} aria-label="Demonstration">
      {recording === null ? (
        <p className={bench.row}>
          <button type="button" className="button button-small" onClick={recorder.begin}>
            Record a demonstration
          </button>
          <span className={bench.hint} role="status">
            {stored ? (
              <>
                It is kept. <a href={`${demonstrations.list}/${stored}`}>Review it before showing it</a>
              </>
            ) : (
              'Space the line as usual; each gesture becomes a step that can be looked at again, with its reason.'
            )}
          </span>
          {!stored && (
            <a className="note-size" href={demonstrations.list}>
              Demonstrations of this exercise
            </a>
          )}
        </p>
      ) : (
        <>
          <RecordingState recording={recording} recorder={recorder} />
          {!deviceStores && (
            <p role="alert">
              <strong>This device has no room for the recording. Stop and keep it before you leave this page.</strong>
            </p>
          )}
          <Reasons recording={recording} recorder={recorder} />
          {recording.state === 'ended' && <SaveRecording recording={recording} recorder={recorder} />}
        </>
      )}
    </section>
  );
}

function RecordingState({ recording, recorder }: { recording: Recording; recorder: Recorder }) {
  const { state, steps } = recording;
  const words = { running: 'Recording', paused: 'Recording pauses', ended: 'Recorded' }[state];
  return (
    <p className={bench.row}>
      <span className={styles.state} role="status" data-recording={state}>
        {words}: {counted(steps.length, 'step')}
        {isFull(recording) && `, and ${STEP_LIMIT} is the most`}.
      </span>
      {state === 'running' && (
        <button type="button" className="button button-small" onClick={recorder.pause}>
          Pause
        </button>
      )}
      {state !== 'running' && !isFull(recording) && (
        <button type="button" className="button button-small" onClick={recorder.resume}>
          Continue recording
        </button>
      )}
      {state !== 'ended' && (
        <button type="button" className="button button-small" onClick={recorder.end}>
          Stop
        </button>
      )}
      {state === 'running' && (
        <button type="button" className="button button-text button-small" onClick={recorder.remark}>
          Say something of this gap and leave it
        </button>
      )}
      {state === 'paused' && (
        <span className={bench.hint}>What you do in the pause becomes one step when you go on.</span>
      )}
    </p>
  );
}

/** The reason of the newest step is open; all others can be opened. */
function Reasons({ recording, recorder }: { recording: Recording; recorder: Recorder }) {
  const { steps } = recording;
  const newest = steps.length - 1;
  if (newest < 0) return null;
  return (
    <>
      <Reason recording={recording} index={newest} recorder={recorder} />
      {newest > 0 && (
        <details className="more">
          <summary>Reasons of the steps before</summary>
          <div className={styles.reasons}>
            {steps.slice(0, newest).map((_, index) => (
              <Reason key={index} recording={recording} index={index} recorder={recorder} />
            ))}
          </div>
        </details>
      )}
    </>
  );
}

function Reason({ recording, index, recorder }: { recording: Recording; index: number; recorder: Recorder }) {
  const { pack } = useSession().props;
  const id = useId();
  const step = recording.steps[index]!;
  return (
    <div className={bench.reason}>
      <label htmlFor={id}>
        Step {index + 1}, {stepWords(pack, step)}: why (optional)
      </label>
      <textarea
        id={id}
        rows={2}
        maxLength={STEP_REASON_LIMIT}
        value={step.reason}
        onChange={(event) => recorder.setReason(index, event.currentTarget.value)}
      />
    </div>
  );
}

/** Gives the recording its title and saves it, or discards it after asking. */
function SaveRecording({ recording, recorder }: { recording: Recording; recorder: Recorder }) {
  const { signIn } = useSession().props;
  const { sending, trouble } = useSyncExternalStore(recorder.store.subscribe, recorder.store.get, recorder.store.get);
  const [asked, setAsked] = useState(false);
  const [missing, setMissing] = useState('');
  const id = useId();
  function save() {
    if (recording.steps.length === 0)
      return setMissing('There is no step in it yet: go on recording and space something.');
    if (recording.title.trim() === '') return setMissing('Give the demonstration a title.');
    setMissing('');
    void recorder.send();
  }
  return (
    <form
      className={styles.keep}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        save();
      }}
    >
      <div className={bench.reason}>
        <label htmlFor={id}>Title</label>
        <input
          id={id}
          className="input"
          type="text"
          maxLength={120}
          value={recording.title}
          aria-invalid={missing !== ''}
          aria-describedby={missing ? `${id}-missing` : undefined}
          onChange={(event) => recorder.setTitle(event.currentTarget.value)}
        />
        {missing && (
          <span id={`${id}-missing`} role="alert" className={bench.fieldError}>
            {missing}
          </span>
        )}
      </div>
      <p className={bench.row}>
        <button type="submit" className="button button-main button-small" disabled={sending}>
          {sending ? 'Sending …' : 'Keep it'}
        </button>
        {asked ? (
          <>
            <span>Throw {counted(recording.steps.length, 'step')} away for good?</span>
            <button type="button" className="button button-small" onClick={recorder.discard}>
              Yes, throw it away
            </button>
            <button type="button" className="button button-text button-small" onClick={() => setAsked(false)}>
              No
            </button>
          </>
        ) : (
          <button type="button" className="button button-text button-small" onClick={() => setAsked(true)}>
            Throw it away…
          </button>
        )}
      </p>
      {trouble && (
        <p role="alert">
          {trouble === 'unreachable' &&
            'No answer from the server. The recording is kept on this device; try again when it answers.'}
          {trouble === 'signed out' && (
            <>
              Your session has ended. The recording is kept on this device.{' '}
              <a href={signIn ?? '/sign-in'} target="_blank" rel="noreferrer">
                Sign in again
              </a>{' '}
              (opens a new tab), then keep it.
            </>
          )}
          {typeof trouble === 'object' && trouble.refused}
        </p>
      )}
      <p className={bench.hint}>Only the course’s instructors and assistants see it until it is shown.</p>
    </form>
  );
}

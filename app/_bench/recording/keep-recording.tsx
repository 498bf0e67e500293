import { useId, useState, useSyncExternalStore } from 'react';
import type { Recording } from '@/shared/demonstration/recording';
import { counted } from '@/shared/text/number';
import { useSession } from '../context';
import type { Recorder } from './recorder';
import bench from '../bench.module.css';
import styles from './recording.module.css';

/** Gives the recording its title and keeps it, or throws it away after asking. */
export function KeepRecording({ recording, recorder }: { recording: Recording; recorder: Recorder }) {
  const { signIn } = useSession().props;
  const { sending, trouble } = useSyncExternalStore(recorder.store.subscribe, recorder.store.get, recorder.store.get);
  const [asked, setAsked] = useState(false);
  const [missing, setMissing] = useState('');
  const id = useId();
  function keep() {
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
        keep();
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
          {sending ? 'On its way …' : 'Keep it'}
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
      <p className={bench.hint}>Only teachers of the course see it until somebody shows it.</p>
    </form>
  );
}

import { useState } from 'react';
import { useBench, useSession } from '../context';
import { firstSingleKeys, replayKeys, type SingleKeyAct, steadyKeys } from '../input/keys';
import { lookTable } from '@/app/_line/looks';
import type { LookName } from '@/shared/line/looks';
import styles from '../bench.module.css';

type Props = {
  keys: Record<SingleKeyAct, string>;
  onChange: (keys: Record<SingleKeyAct, string>) => void;
  /** Beside a replay: there the keys for gaps go from step to step. */
  replay?: boolean;
};

/** All keys, on request. Single keys can be switched off or changed. */
export function KeysPanel({ keys, onChange, replay = false }: Props) {
  const session = useSession();
  const on = useBench((state) => state.singleKeys);
  return (
    <section className={styles.keys} aria-label="Keys">
      <div>
        <h2>{replay ? 'On the sheet' : 'On a gap'}</h2>
        <dl>
          {(replay ? replayKeys : steadyKeys).map(({ keys: names, says }) => (
            <div key={says}>
              <dt>
                {names.map((name) => (
                  <kbd key={name}>{name}</kbd>
                ))}
              </dt>
              <dd>{says}</dd>
            </div>
          ))}
        </dl>
      </div>
      <div>
        <h2>Single keys</h2>
        <p className={styles.row}>
          <label>
            <input
              type="checkbox"
              checked={on}
              onChange={(event) => session.store.set({ singleKeys: event.currentTarget.checked })}
            />{' '}
            Use single keys
          </label>
          <button type="button" className="button button-text button-small" onClick={() => onChange(firstSingleKeys)}>
            As they were at first
          </button>
        </p>
        <dl className={styles.singleKeys}>
          {(Object.keys(keys) as SingleKeyAct[]).map((act) => (
            <div key={act}>
              <dt>
                <KeyField act={act} keys={keys} onChange={onChange} disabled={!on} />
              </dt>
              <dd>{wordsFor(act, replay)}</dd>
            </div>
          ))}
        </dl>
      </div>
    </section>
  );
}

/** Takes the next key pressed while it has the focus; if that key is in use elsewhere, the two swap. */
function KeyField({ act, keys, onChange, disabled }: Props & { act: SingleKeyAct; disabled: boolean }) {
  const [error, setError] = useState('');
  return (
    <>
      <input
        className={styles.keyField}
        type="text"
        aria-label={`Key for: ${wordsFor(act)}`}
        aria-invalid={error !== ''}
        disabled={disabled}
        value={keys[act]}
        maxLength={2}
        onFocus={(event) => event.currentTarget.select()}
        onChange={(event) => {
          const key = event.currentTarget.value.slice(-1).toLowerCase();
          if (!/^\S$/.test(key) || /[0-9+\-\u2212]/.test(key))
            return setError('Numbers are for typing an offset: choose a letter or a sign.');
          setError('');
          const taken = (Object.keys(keys) as SingleKeyAct[]).find((other) => keys[other] === key);
          onChange({ ...keys, ...(taken && { [taken]: keys[act] }), [act]: key });
        }}
      />
      {error && (
        <span role="alert" className={styles.fieldError}>
          {error}
        </span>
      )}
    </>
  );
}

function wordsFor(act: SingleKeyAct, replay = false): string {
  if (act.startsWith('look ')) return lookTable[act.slice('look '.length) as LookName].name;
  const steps: Record<string, string> = {
    'gap before': 'the step before',
    'gap after': 'the next step',
    'show built-in': 'this spacing, built-in',
    'watch again': 'play, stop',
  };
  const words: Record<string, string> = {
    'gap before': 'the gap before; Shift grows the run',
    'gap after': 'the gap after; Shift grows the run',
    'show built-in': 'Mine, Built-in',
    'true size': 'true size; fitted',
    larger: 'working view larger',
    smaller: 'working view smaller',
    'watch again': 'watch this sitting again; back to mine',
    'show keys': 'show or hide the keys',
  };
  return (replay ? steps[act] : undefined) ?? words[act] ?? act;
}

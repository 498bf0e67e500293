import { useEffect, useId } from 'react';
import { useBench, useSession } from '../context';
import { lookWords, type Laying, type Look } from '@/app/_line/looks';
import { mayTell } from '../session/may-tell';
import { Legend } from './legend';
import { setZoom } from '../hands/pointer';
import styles from '../bench.module.css';

/** Ways of looking, each a word that can be switched on; all go together. */
export function LooksPanel() {
  const session = useSession();
  const { tells, draftId, underlays = [], start } = session.props;
  const looks = useBench((state) => state.looks);
  const laid = useBench((state) => state.laid);
  const laying = useBench((state) => state.laying);
  const zoom = useBench((state) => state.zoom);
  const id = useId();
  const offered = (Object.keys(lookWords) as Look[]).filter((look) => look !== 'why' || mayTell(tells, 'evenness'));
  useTurns(laid !== null && laying === 'in turn');
  return (
    <section className={`${styles.panel} ${styles.panelWide}`} aria-label="Ways of looking">
      <div className={styles.looks} role="group" aria-label="Look at it">
        {offered.map((look) => (
          <button
            key={look}
            type="button"
            className={styles.look}
            aria-pressed={looks[look]}
            title={lookWords[look].says}
            onClick={() => session.toggleLook(look)}
          >
            {lookWords[look].name}
          </button>
        ))}
      </div>
      <Legend />
      <div className={styles.row}>
        <span className={styles.inlineField}>
          <label htmlFor={`${id}-laid`}>Compare with</label>
          <select
            id={`${id}-laid`}
            value={laid ?? ''}
            onChange={(event) => session.store.set({ laid: event.currentTarget.value || null, otherTurn: false })}
          >
            <option value="">nothing</option>
            <option value="built-in">Built-in</option>
            {start && <option value="start">{start.label}</option>}
            {draftId === 'demonstration' && <option value="step before">The step before</option>}
            {underlays.map(({ id, label }) => (
              <option key={id} value={id}>
                {label}
              </option>
            ))}
          </select>
        </span>
        {laid !== null && (
          <span className={styles.inlineField}>
            <label htmlFor={`${id}-laying`}>How</label>
            <select
              id={`${id}-laying`}
              value={laying}
              onChange={(event) => session.store.set({ laying: event.currentTarget.value as Laying, otherTurn: false })}
            >
              <option value="under">as outlines under it</option>
              <option value="beside">beside it</option>
              <option value="in turn">in slow turns</option>
            </select>
          </span>
        )}
        <span className={styles.zoom}>
          <span className={styles.hint}>Working view</span>
          <button type="button" className="button button-small" onClick={() => setZoom(session, zoom / 1.25)}>
            Smaller
          </button>
          <button type="button" className="button button-small" onClick={() => setZoom(session, zoom * 1.25)}>
            Larger
          </button>
        </span>
      </div>
    </section>
  );
}

/** Slow: each setting stays for a second and a half. Choosing it is asking for motion; nothing moves otherwise. */
const TURN_MS = 1500;

function useTurns(turning: boolean): void {
  const { store } = useSession();
  useEffect(() => {
    if (!turning) return;
    const timer = setInterval(() => store.set({ otherTurn: !store.get().otherTurn }), TURN_MS);
    return () => {
      clearInterval(timer);
      store.set({ otherTurn: false });
    };
  }, [store, turning]);
}

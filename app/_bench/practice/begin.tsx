import { useState } from 'react';
import type { PracticeKind, PracticeTask } from '@/shared/schemas/practice';
import styles from './practice.module.css';

const SIZES = [24, 48, 96];

/** Chooses what is practised, and begins. */
export function Begin({ begin }: { begin: (task: PracticeTask, kind: PracticeKind, size: number) => void }) {
  const [kind, setKind] = useState<PracticeKind>('any');
  const [size, setSize] = useState(48);
  return (
    <section aria-label="Begin" className={styles.begin}>
      <p>
        A line has one gap that is too wide or too tight. The fault gets smaller as long as you see it. A sitting takes
        about forty looks.
      </p>
      <p className={styles.row}>
        <label htmlFor="practice-kind">Gaps</label>
        <select
          id="practice-kind"
          className="input"
          value={kind}
          onChange={(event) => setKind(event.currentTarget.value as PracticeKind)}
        >
          <option value="any">of every kind</option>
          <option value="straight">between straight sides</option>
          <option value="round">with a round side</option>
          <option value="open">with a slanted or open side</option>
        </select>
        <label htmlFor="practice-size">Size</label>
        <select
          id="practice-size"
          className="input"
          value={size}
          onChange={(event) => setSize(Number(event.currentTarget.value))}
        >
          {SIZES.map((one) => (
            <option key={one} value={one}>
              {one} px
            </option>
          ))}
        </select>
      </p>
      <p className={styles.row}>
        <button type="button" className="button button-main" onClick={() => begin('more even', kind, size)}>
          Which is the more even?
        </button>
        <button type="button" className="button" onClick={() => begin('gap off', kind, size)}>
          Which gap is off?
        </button>
      </p>
    </section>
  );
}

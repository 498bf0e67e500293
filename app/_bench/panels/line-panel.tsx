import { useEffect, useState } from 'react';
import { flushSync } from 'react-dom';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import { spacingOf } from '@/shared/editing/document';
import { canRedo, canUndo } from '@/shared/editing/history';
import { withUnit } from '@/shared/text/number';
import styles from '../bench.module.css';
import { useBench, useSession } from '../context';
import { current } from '../session/state';
import { Compare } from './looks-panel';
import { NumberField } from './number-field';
import { WatchAgain } from '../replay/replay-controls';

/** What concerns the whole line: tracking, undo and redo, and the comparison with the face's own spacing. */
export function LinePanel() {
  const session = useSession();
  const tracking = useBench((state) => current(state).tracking);
  const undoable = useBench((state) => canUndo(state.history));
  const redoable = useBench((state) => canRedo(state.history));
  const { began } = session.props;
  const untouched = useBench(
    (state) =>
      current(state).tracking === (began?.tracking ?? 0) &&
      current(state).offsets.every((offset, pair) => offset === (began?.offsets[pair] ?? 0)),
  );
  const shown = useBench((state) => state.shown);
  return (
    <section className={`${styles.panel} ${styles.whole}`} aria-label="The whole line">
      <div className={styles.nudges}>
        <button
          type="button"
          className={styles.nudge}
          onClick={() => session.edit({ kind: 'nudge tracking', by: -5 })}
          aria-label="Tracking 5 closer"
        >
          −5
        </button>
        <NumberField
          label="Tracking"
          value={tracking}
          onSet={(value) => session.edit({ kind: 'set tracking', tracking: value })}
        />
        <button
          type="button"
          className={styles.nudge}
          onClick={() => session.edit({ kind: 'nudge tracking', by: 5 })}
          aria-label="Tracking 5 wider"
        >
          +5
        </button>
        <button
          type="button"
          className="button button-text button-small"
          disabled={untouched}
          onClick={() => session.edit({ kind: 'reset line' })}
        >
          {began ? 'Whole line back to how it began' : 'Whole line back to built-in'}
        </button>
      </div>
      <div className={styles.row}>
        <div className={styles.switch} role="group" aria-label="Show">
          <button type="button" aria-pressed={shown === 'mine'} onClick={() => session.store.set({ shown: 'mine' })}>
            Mine
          </button>
          <button
            type="button"
            aria-pressed={shown === 'built-in'}
            onClick={() => session.store.set({ shown: 'built-in' })}
          >
            Built-in
          </button>
        </div>
        <button type="button" className="button button-small" disabled={!undoable} onClick={session.undo}>
          Undo
        </button>
        <button type="button" className="button button-small" disabled={!redoable} onClick={session.redo}>
          Redo
        </button>
        <WatchAgain />
      </div>
      <Compare />
    </section>
  );
}

/** The line as outlines at its true size, rendered only while the page is printed. */
export function PrintProof() {
  const session = useSession();
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    const before = () => flushSync(() => setPrinting(true));
    const after = () => setPrinting(false);
    window.addEventListener('beforeprint', before);
    window.addEventListener('afterprint', after);
    return () => {
      window.removeEventListener('beforeprint', before);
      window.removeEventListener('afterprint', after);
    };
  }, []);
  if (!printing) return null;
  const { pack, size, ground } = session.props;
  return (
    <div className={styles.printProof}>
      <SheetFrame scrolls ground={ground} caption={`${withUnit(size.value, size.unit)}, when it is printed at 100%`}>
        <LineDrawing pack={pack} spacing={spacingOf(current(session.store.get()))} size={size} />
      </SheetFrame>
    </div>
  );
}

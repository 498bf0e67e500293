import { REASON_LIMIT } from '@/shared/editing/document';
import { pairLetters } from '@/shared/editing/pair-words';
import { useBench, useSession } from '../context';
import { chosenRun, current } from '../session/state';
import { NumberField } from './number-field';
import styles from '../bench.module.css';

/** Where a teacher sets a reference: how far a student may be from it at this gap, and why it is set so. */
export function ReferencePanel() {
  const session = useSession();
  const from = useBench((state) => chosenRun(state).from);
  const to = useBench((state) => chosenRun(state).to);
  const head = useBench((state) => state.chosen.head);
  const tolerance = useBench((state) => current(state).tolerances?.[head] ?? null);
  const reason = useBench((state) => current(state).reasons?.[head] ?? '');
  const { left, right } = pairLetters(session.props.pack, head);
  const run = { from, to };
  return (
    <section className={styles.panel} aria-label="Tolerance and reason">
      <div className={styles.row}>
        <NumberField
          label="Tolerance ±"
          value={tolerance}
          least={0}
          placeholder="usual"
          onSet={(value) => session.edit({ kind: 'set tolerance', run, tolerance: value })}
          onEmpty={() => session.edit({ kind: 'set tolerance', run, tolerance: null })}
        />
        <span className={styles.hint}>
          {tolerance === null
            ? 'Empty: the exercise’s own tolerance.'
            : 'Within this a student’s gap counts as the same.'}
        </span>
      </div>
      <label className={styles.reason}>
        Reason for “{left}” and “{right}” (if you like)
        <textarea
          rows={2}
          maxLength={REASON_LIMIT}
          value={reason}
          onChange={(event) =>
            session.follow({ kind: 'set reason', pair: head, reason: event.currentTarget.value }, 'start')
          }
          onBlur={session.endGesture}
        />
      </label>
    </section>
  );
}

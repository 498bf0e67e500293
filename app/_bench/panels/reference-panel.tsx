import { useState } from 'react';
import { sameDocument } from '@/shared/editing/document';
import { REASON_LIMIT } from '@/shared/schemas/draft';
import { pairLetters } from '@/shared/editing/pair-words';
import { counted } from '@/shared/text/number';
import styles from '../bench.module.css';
import { useBench, useSession } from '../context';
import { chosenRun, current } from '../session/state';
import { NumberField } from './number-field';

/** Where an instructor sets a reference: the tolerance at this gap, and the reason for this spacing. */
export function ReferencePanel() {
  const session = useSession();
  const first = useBench((state) => chosenRun(state).first);
  const last = useBench((state) => chosenRun(state).last);
  const head = useBench((state) => state.chosen.head);
  const tolerance = useBench((state) => current(state).tolerances?.[head] ?? null);
  const reason = useBench((state) => current(state).reasons?.[head] ?? '');
  const { left, right } = pairLetters(session.props.pack, head);
  const run = { first, last };
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
        Reason for “{left}” and “{right}” (optional)
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

/**
 * A spacing of the same words, offered as a start and shown as an overlay meanwhile. Says what it would replace;
 * accepting it is one undo step like any other, and reaches journal and server as one.
 */
export function StartOffer() {
  const session = useSession();
  const { start, pack } = session.props;
  const mine = useBench(current);
  const [answer, setAnswer] = useState<'taken' | 'left' | null>(null);
  if (!start || answer === 'left') return null;
  const { tracking, offsets } = start.spacing;
  const settle = (how: 'taken' | 'left') => {
    if (how === 'taken') session.edit({ kind: 'take spacing', tracking, offsets });
    if (session.store.get().overlay === 'start') session.store.set({ overlay: null });
    setAnswer(how);
    forgetOffer();
  };
  if (answer === 'taken') {
    return (
      <p className={styles.offer} role="status">
        <span>Started from {start.label}. Undo brings back what you had.</span>
      </p>
    );
  }
  const differing = mine.offsets.filter((offset, pair) => offset !== offsets[pair]).length;
  const alike = sameDocument(mine, { ...mine, tracking, offsets });
  return (
    <section className={styles.offer} aria-label="Start from another spacing">
      <p>
        <strong>{start.label}</strong>, the same words, lies under your line as thin outlines.{' '}
        {alike
          ? 'Its offsets and tracking are yours here already.'
          : `Starting from it replaces ${what(differing, mine.tracking !== tracking)} of this line’s ${pack.builtIn.length} gaps in one step; Undo brings yours back.`}
      </p>
      <p className={styles.row}>
        {!alike && (
          <button type="button" className="button button-small" onClick={() => settle('taken')}>
            Start from it
          </button>
        )}
        <button type="button" className="button button-text button-small" onClick={() => settle('left')}>
          {alike ? 'Go on' : 'Leave mine as it is'}
        </button>
      </p>
    </section>
  );
}

const what = (gaps: number, tracking: boolean): string =>
  gaps === 0 ? 'the tracking' : `${counted(gaps, 'offset')}${tracking ? ' and the tracking' : ''}`;

/** An answered offer is not repeated when the page is opened again. */
function forgetOffer(): void {
  const address = new URL(window.location.href);
  if (!address.searchParams.has('start')) return;
  address.searchParams.delete('start');
  window.history.replaceState(window.history.state, '', address);
}

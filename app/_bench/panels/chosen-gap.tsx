import type { ReactNode, Ref } from 'react';
import { pairAmounts, pairLetters } from '@/shared/editing/pair-words';
import { smallestInUse } from '@/shared/exercise/sizes';
import type { Pack } from '@/shared/schemas/pack';
import type { Run } from '@/shared/schemas/spacing';
import { asShareOf, pairName } from '@/shared/wording/lengths';
import { outsideWords } from '@/shared/wording/usual-words';
import { heldTogether, numberText, signed } from '@/shared/text/number';
import { useBench, useSession } from '../context';
import { prepareLine } from '@/shared/measure/prepared-line';
import { STEPS } from '../input/keys';
import { besideOf, contactWords, excessOf, excessWords, opennessOf } from '../openness';
import { tellsAtLeast } from '@/shared/exercise/what-the-bench-tells';
import { type BenchState, chosenRun, current } from '../session/state';
import { speaksOfUsual, spokenOf } from '../usual';
import { useUsual } from '../use-usual';
import { NumberField } from './number-field';
import { UsualScale } from './usual-scale';
import styles from '../bench.module.css';

type Props = {
  fieldRef: Ref<HTMLInputElement>;
  backToGap: () => void;
  /** What else is kept at hand. */
  children?: ReactNode;
};

/** The chosen gap or run: its letters, and the means to set it. */
export function ChosenGap({ fieldRef, backToGap, children }: Props) {
  const session = useSession();
  const first = useBench((state) => chosenRun(state).first);
  const last = useBench((state) => chosenRun(state).last);
  const document = useBench(current);
  const { began } = session.props;
  const run = { first, last };
  const offsets = document.offsets.slice(first, last + 1);
  const shared = offsets.every((offset) => offset === offsets[0]) ? (offsets[0] ?? 0) : null;
  const nudge = (by: number) => () => session.edit({ kind: 'nudge', run, by });
  return (
    <section className={`${styles.panel} ${styles.chosenGap}`} aria-label="Chosen gap">
      <div className={styles.headed}>
        <h2 className={styles.pairHeading}>
          <PairName first={first} last={last} />
        </h2>
        <button
          type="button"
          className="button button-text button-small"
          disabled={offsets.every((offset, index) => offset === (began?.offsets[first + index] ?? 0))}
          onClick={() => session.edit({ kind: 'reset', run })}
        >
          {began ? 'Back to how it began' : 'Back to built-in'}
        </button>
      </div>
      <div className={styles.nudges}>
        {[STEPS.coarse, STEPS.middle, STEPS.fine].map((step) => (
          <button
            key={step}
            type="button"
            className={styles.nudge}
            onClick={nudge(-step)}
            aria-label={`${step} closer`}
          >
            {numberText(-step)}
          </button>
        ))}
        <NumberField
          ref={fieldRef}
          label="Offset"
          value={shared}
          placeholder="differ"
          onSet={(offset) => session.edit({ kind: 'set offset', run, offset })}
          onEnter={backToGap}
        />
        {[STEPS.fine, STEPS.middle, STEPS.coarse].map((step) => (
          <button key={step} type="button" className={styles.nudge} onClick={nudge(step)} aria-label={`${step} wider`}>
            +{step}
          </button>
        ))}
      </div>
      {first === last && last + 1 < document.offsets.length && <LetterAlone letter={last + 1} />}
      {children}
    </section>
  );
}

/** What there is to say of the chosen gap: its numbers with a comparison, and what the exercise lets the bench tell. */
export function AboutGap() {
  const first = useBench((state) => chosenRun(state).first);
  const last = useBench((state) => chosenRun(state).last);
  if (first !== last) return null;
  return (
    <section className={`${styles.panel} ${styles.about}`} aria-label="About this gap">
      <UsualScale pair={first} />
      <Amounts pair={first} />
      <Telling pair={first} />
    </section>
  );
}

function PairName({ first, last }: Run) {
  const { pack } = useSession().props;
  const { left, right, wordSpace } = pairLetters(pack, first);
  const letters =
    first === last ? `${left}${wordSpace ? '\u2002' : '\u200A'}${right}` : `${left} … ${pairLetters(pack, last).right}`;
  const count =
    first === last
      ? `${wordSpace ? 'word space' : 'gap'} ${first + 1} of ${pack.builtIn.length}`
      : `${last - first + 1} gaps chosen`;
  return (
    <>
      <span className={styles.pairLetters}>{letters}</span>
      <span className={styles.pairCount}>{count}</span>
    </>
  );
}

/** One letter between its neighbours: one gap gains what the other loses, and the rest of the line doesn't move. */
function LetterAlone({ letter }: { letter: number }) {
  const session = useSession();
  const { left } = pairLetters(session.props.pack, letter);
  const shift = (by: number) => () => session.edit({ kind: 'shift letter', letter, by });
  return (
    <p className={`${styles.row} ${styles.letterAlone}`}>
      <span className={styles.hint}>Only the “{left}”, between its neighbours</span>
      <button type="button" className={styles.nudge} onClick={shift(-STEPS.middle)}>
        5 left
      </button>
      <button type="button" className={styles.nudge} onClick={shift(STEPS.middle)}>
        5 right
      </button>
    </p>
  );
}

function Amounts({ pair }: { pair: number }) {
  const { pack } = useSession().props;
  const amounts = pairAmounts(pack, useBench(current), pair);
  const share = amounts.offset === 0 ? null : asShareOf(amounts.offset, besideOf(prepareLine(pack)));
  return (
    <p className={styles.amounts}>
      Built-in {signed(amounts.builtIn)}
      {amounts.tracking !== 0 && <>, tracking {signed(amounts.tracking)}</>}, offset {signed(amounts.offset)}, total{' '}
      {signed(amounts.total)}
      {share ? (
        <>
          : you have {amounts.offset < 0 ? 'removed' : 'added'} {share}.
        </>
      ) : (
        <> thousandths of an em.</>
      )}
    </p>
  );
}

/** What the bench may show for this gap, by the exercise or by an accommodation. */
function Telling({ pair }: { pair: number }) {
  const { props } = useSession();
  const { pack, size, smallestSize, tells, accommodations } = props;
  const line = prepareLine(pack);
  const usual = useUsual({ pack, tells });
  const words = useBench((state: BenchState) => {
    const document = current(state);
    const message: string[] = [];
    const contact = tellsAtLeast(tells, 'contact')
      ? contactWords(line, document, pair, smallestInUse(size, smallestSize))
      : null;
    if (contact) message.push(contact);
    if (tellsAtLeast(tells, 'evenness') || accommodations?.speakGaps) {
      const outside = usual && speaksOfUsual(props) && spokenOf(pack, document, usual, size, pair);
      const openness = opennessOf(line, document);
      // One sentence a pair, never two that disagree: being unusual matters more than being a little wide or narrow.
      message.push(
        outside
          ? outsideWords(nameOf(pack, pair), outside)
          : excessWords(excessOf(line, document, openness, pair), besideOf(line)),
      );
    }
    return heldTogether(message.join(' '));
  });
  return words ? <p className={styles.telling}>{words}</p> : null;
}

function nameOf(pack: Pack, pair: number): string {
  const { left, right } = pairLetters(pack, pair);
  return pairName([left, right]);
}

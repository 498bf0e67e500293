import { LineDrawing } from '@/app/_line/LineDrawing';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import { pairLetters } from '@/shared/editing/pair-words';
import type { Staircase } from '@/shared/practice/staircase';
import type { PracticeKind, PracticeTask } from '@/shared/schemas/practice';
import { numberText } from '@/shared/text/number';
import { PointAtGap } from './point-at-gap';
import type { Trial } from './trial';
import styles from './practice.module.css';

export type Sheet = {
  task: PracticeTask;
  kind: PracticeKind;
  size: number;
  stair: Staircase;
  trial: Trial;
  answer: { right: boolean } | null;
};
type Props = { sheet: Sheet; answer: (right: boolean) => void; next: () => void; leave: () => void };

/** One look: the question, and once it is answered what was there. */
export function Question({ sheet, answer, next, leave }: Props) {
  const { task, trial, size, answer: answered } = sheet;
  return (
    <section className={styles.practice} aria-label="Question">
      <h2>{task === 'more even' ? 'Which of the two is the more even?' : 'Which gap is off?'}</h2>
      {task === 'more even' ? (
        <TwoSettings sheet={sheet} answer={answer} />
      ) : (
        <PointAtGap
          pack={trial.pack}
          spacing={trial.faulty}
          size={size}
          answered={answered !== null}
          choose={(gap) => answer(gap === trial.gap)}
        />
      )}
      <p role="status" className={styles.said}>
        {answered ? answerWords(sheet, answered.right) : ''}
      </p>
      <p className={styles.row}>
        {answered && (
          <button type="button" className="button button-main" autoFocus onClick={next}>
            Next
          </button>
        )}
        <button type="button" className="button button-text" onClick={leave}>
          Leave off
        </button>
        <span className="quiet note-size">look {sheet.stair.trials + (answered ? 0 : 1)}</span>
      </p>
    </section>
  );
}

function TwoSettings({ sheet: { trial, size, answer: answered }, answer }: Pick<Props, 'sheet' | 'answer'>) {
  const line = (spacing: Trial['even']) => (
    <SheetFrame scrolls ground="light">
      <LineDrawing pack={trial.pack} spacing={spacing} size={{ value: size, unit: 'px' }} label={null} />
    </SheetFrame>
  );
  return (
    <>
      {line(trial.evenAbove ? trial.even : trial.faulty)}
      <p>
        <button type="button" className="button" disabled={answered !== null} onClick={() => answer(trial.evenAbove)}>
          The upper one
        </button>
      </p>
      {line(trial.evenAbove ? trial.faulty : trial.even)}
      <p>
        <button type="button" className="button" disabled={answered !== null} onClick={() => answer(!trial.evenAbove)}>
          The lower one
        </button>
      </p>
    </>
  );
}

function answerWords({ task, trial }: Sheet, right: boolean): string {
  const letters = pairLetters(trial.pack, trial.gap);
  const where = task === 'more even' ? ` ${trial.evenAbove ? 'below' : 'above'}` : '';
  return `${right ? 'Yes' : 'No'}: the gap between “${letters.left}” and “${letters.right}”${where} is ${trial.fault > 0 ? 'too wide' : 'too tight'} by ${numberText(Math.abs(trial.fault))} thousandths.`;
}

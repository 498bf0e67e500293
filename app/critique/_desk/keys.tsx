'use client';

import style from './desk.module.css';

type Props = {
  list: readonly (readonly [string, string])[];
  open: boolean;
  on: boolean;
  turn: (on: boolean) => void;
  toggle: (open: boolean) => void;
};

/** The keys, on request, and the switch that turns them off. */
export function KeyHelp({ list, open, on, turn, toggle }: Props) {
  return (
    <details className="more" open={open} onToggle={(event) => toggle(event.currentTarget.open)}>
      <summary>Keys</summary>
      <p>
        <label>
          <input type="checkbox" checked={on} onChange={(event) => turn(event.target.checked)} /> Single keys work on
          this page
        </label>
      </p>
      <dl className={style.keys}>
        {list.map(([key, what]) => (
          <div key={key}>
            <dt>
              <kbd>{key}</kbd>
            </dt>
            <dd>{what}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}

/** The desk's own single keys. A capital is the key with shift. A key either chooses or changes, never both. */
export const deskKeys = [
  ['.', 'next pair'],
  [',', 'pair before'],
  ['>', 'one pair more in the run'],
  ['<', 'one pair less in the run'],
  ['0', 'the whole line'],
  ['f', 'next fault the measure found (shows the deviations)'],
  ['d', 'show or hide deviations'],
  ['o', 'suggest: open by 5'],
  ['t', 'suggest: tighten by 5'],
  ['O', 'suggest: open by 1'],
  ['T', 'suggest: tighten by 1'],
  ['x', 'drop the suggestion'],
  ['w', 'write a note here'],
  ['1…9', 'leave a stock note here'],
  ['z', 'withdraw your last note'],
  ['v', 'ways of looking: then the letter of one, or v once more for none'],
  ['u', 'overlay the next spacing: the previous round, references, built-in'],
  ['e', 'what has changed since the last round, and what was said then'],
  ['m', 'marks: then a digit gives the level and goes on'],
  ['s', 'next student, this line'],
  ['S', 'student before, this line'],
  ['l', 'next line; after the last, the next student'],
  ['L', 'previous line'],
  ['a', 'this line across the class'],
  ['q', 'go to the next waiting proof'],
  ['k', 'skip this proof: it comes last for you, and the next one is taken'],
  ['b', 'give this proof back, and to the queue'],
  ['h', 'these keys'],
] as const;

/** The keys on one line across the class, and while one of the lines that share a fault is in view. */
export const acrossKeys = [
  ['f', 'next fault that several share'],
  ['d', 'show or hide deviations'],
  ['v', 'ways of looking: then the letter of one, or v once more for none'],
  ['1…9', 'use a stock note as the remark'],
  ['w', 'write the remark'],
  ['m', 'with or without what the measure suggests for each'],
  ['g', 'go through those who share the fault'],
  ['y', 'at a look: yes, leave it'],
  ['n', 'at a look: not this one'],
  ['e', 'at a look: other words for this one'],
  ['o t O T', 'at a look: open or tighten by 5, by 1'],
  ['x', 'at a look: drop the suggestion'],
  ['b', 'at a look: back to all'],
  ['z', 'withdraw your last remark'],
  ['p', 'next page; with shift the page before'],
  ['l', 'next line; with shift the previous line'],
  ['h', 'these keys'],
] as const;

export { useKeys, type Acts } from '@/app/_ui/use-keys';

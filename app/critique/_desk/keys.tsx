'use client';

import { lookTable, looksOn } from '@/app/_line/looks';
import { Button } from '@/app/_ui/Button';
import style from './desk.module.css';

type Props = {
  list: readonly (readonly [string, string])[];
  on: boolean;
  turn: (on: boolean) => void;
  close: () => void;
};

/** The keys, on request, and the switch that turns them off. */
export function KeyHelp({ list, on, turn, close }: Props) {
  return (
    <section className={style.keyList} aria-label="Keys">
      <p>
        <label>
          <input type="checkbox" checked={on} onChange={(event) => turn(event.target.checked)} /> Single keys work on
          this page
        </label>{' '}
        <Button small kind="text" onClick={close}>
          Close
        </Button>
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
    </section>
  );
}

/** The desk's own single keys. A capital is the key with shift. A key either chooses or changes, never both. */
export const deskKeys = [
  ['j', 'next pair'],
  ['f', 'previous pair'],
  ['J', 'one pair more in the run'],
  ['F', 'one pair less in the run'],
  ['0', 'the whole line'],
  ...looksOn('desk').map((look) => [lookTable[look].key, lookTable[look].name] as const),
  ['→ ←', 'suggest: open or close by 5'],
  ['↑ ↓', 'suggest: open or close by 1'],
  ['Delete', 'drop the suggestion'],
  ['r', 'write a note here'],
  ['1…9', 'leave a stock note here'],
  ['z', 'withdraw your last note'],
  ['x', 'show or hide deviations'],
  ['i', 'next fault the measure found (shows the deviations)'],
  ['b', 'overlay the next spacing: the previous round, references, built-in'],
  ['e', 'what has changed since the last round, and what was said then'],
  ['v', 'marks: then a digit gives the level and goes on'],
  ['n', 'next line; after the last, the next student'],
  ['N', 'previous line'],
  ['p', 'next student, this line'],
  ['P', 'previous student, this line'],
  ['a', 'this line across the class'],
  ['q', 'go to the next waiting proof'],
  ['k', 'skip this proof: it comes last for you, and the next one is taken'],
  ['G', 'give this proof back, and go to the queue'],
  ['?', 'these keys'],
] as const;

/** The keys on one line across the class, and while one of the lines that share a fault is in view. */
export const acrossKeys = [
  ['i', 'next fault that several share'],
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
  ['?', 'these keys'],
] as const;

export { useKeys, type Acts } from '@/app/_ui/use-keys';

'use client';
import type { DeskLine, EarlierNote } from '@/shared/critique/desk';
import { lettersOf } from '@/shared/critique/run';
import { changeWords, referenceWords } from '@/shared/critique/pair-change';
import { counted } from '@/shared/text/number';
import { quoted } from '@/shared/text/quoted';
import style from './desk.module.css';

type Props = {
  since: DeskLine['since'];
  earlier: EarlierNote[];
  letters: readonly string[];
  choose: (pair: number) => void;
};

/** What has moved since the last round, pair by pair, and the earlier notes on this line. */
export function Earlier({ since, earlier, letters, choose }: Props) {
  return (
    <div className="stack">
      {since === null ? (
        <p className="quiet">This line was not sent in an earlier round.</p>
      ) : (
        <Moved since={since} letters={letters} choose={choose} />
      )}
      {earlier.length === 0 ? (
        <p className="quiet">Nothing was said on this line in an earlier round.</p>
      ) : (
        <ul className={style.findings}>
          {earlier.map((note) => (
            <li key={note.id}>
              <p>
                Round {note.round}
                {note.fromPair === null || note.toPair === null
                  ? ', the line'
                  : `, ${lettersOf(letters, { first: note.fromPair, last: note.toPair })}`}
                : {quoted(note.body)}
              </p>
              {note.changes.map((change) => (
                <p key={change.pair} className="figure-text">
                  {changeWords(change)}
                </p>
              ))}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

function Moved({
  since,
  letters,
  choose,
}: {
  since: NonNullable<DeskLine['since']>;
  letters: readonly string[];
  choose: Props['choose'];
}) {
  if (since.moved.length === 0) return <p>No pair has moved since round {since.round}.</p>;
  return (
    <>
      <p>
        {counted(since.moved.length, 'pair')} moved since round {since.round}, tracking and offset together. Under the
        line, wedges pointing in: tightened; out: opened. Solid: nearer the suggestion or reference. Hollow: further
        away.
      </p>
      <ul className={style.findings}>
        {since.moved.map((change) => {
          const beside = referenceWords(change.reference);
          return (
            <li key={change.pair}>
              {change.place === null ? (
                <>Pair {change.pair + 1}</>
              ) : (
                <button type="button" className={style.plainButton} onClick={() => choose(change.place!)}>
                  {lettersOf(letters, { first: change.place, last: change.place })}
                </button>
              )}
              : <span className="figure-text">{changeWords(change)}</span>
              {beside && <> {beside[0]!.toUpperCase() + beside.slice(1)}.</>}
            </li>
          );
        })}
      </ul>
    </>
  );
}

'use client';
import { Table } from '@/app/_ui/Table';
import type { DeskLine } from '@/shared/critique/desk';
import { lettersOf } from '@/shared/critique/run';
import type { StoredFinding } from '@/shared/schemas/finding';
import { heldTogether, signed, withUnit } from '@/shared/text/number';
import { findingText } from '@/shared/wording/finding-words';
import style from './desk.module.css';

type Props = Pick<DeskLine, 'measure' | 'comparison' | 'across'> & {
  letters: readonly string[];
  tolerance: number;
  choose: (pair: number) => void;
  chosen: number | null;
};

/** What was measured, when it is asked for: each finding in a sentence, then the pairs in numbers. */
export function Deviations({ letters, measure, comparison, across, tolerance, choose, chosen }: Props) {
  if (!measure)
    return (
      <p>
        This line has not been measured yet. It is measured when it is sent; if this doesn’t change, ask the person who
        runs the server to look at the log.
      </p>
    );
  const findings = [...(comparison?.findings ?? []), ...measure.findings].filter(({ weight }) => weight !== 'fact');
  const held = comparison?.nearest != null;
  return (
    <div className="stack">
      <p>
        {held ? (
          <>
            Held against the nearest reference, by {comparison.author}. The whole line is{' '}
            {tightnessWords(comparison.tightness, comparison.tightnessTolerance)}; what follows is what is left of each
            pair after that.
          </>
        ) : (
          <>There is no reference for this line yet, so each pair is held against the middle of its own line.</>
        )}
      </p>
      <Findings findings={findings} />
      {across.length > 0 && (
        <div>
          <p>
            Beside the same text in this proof. These are hints from designers’ own data and from practice, never
            faults:
          </p>
          <ul className={style.findings}>
            {across.map((sentence) => (
              <li key={sentence}>{heldTogether(sentence)}</li>
            ))}
          </ul>
        </div>
      )}
      <Table caption="Pairs, all in 1/1000 em" narrow>
        <thead>
          <tr>
            <th scope="col">Pair</th>
            <th scope="col" className="number">
              Offset
            </th>
            <th scope="col" className="number">
              Apparent gap
            </th>
            <th scope="col" className="number">
              {held ? 'Deviation' : 'From the middle'}
            </th>
            <th scope="col" className="number">
              Tolerance
            </th>
            <th scope="col">In words</th>
          </tr>
        </thead>
        <tbody>
          {measure.pairs.map((pair) => {
            const against = held ? comparison.pairs[pair.index] : undefined;
            const rest = against ? against.rest : pair.suggestion === null ? null : pair.offset - pair.suggestion;
            const within = against?.tolerance ?? tolerance;
            return (
              <tr key={pair.index} aria-current={chosen === pair.index || undefined}>
                <th scope="row">
                  <button type="button" className={style.plainButton} onClick={() => choose(pair.index)}>
                    {lettersOf(letters, { first: pair.index, last: pair.index })}
                  </button>
                </th>
                <td className="number">{signed(pair.tracking + pair.offset)}</td>
                <td className="number">{withUnit(pair.apparentGap, '').trim()}</td>
                <td className="number">{rest === null ? '–' : signed(rest)}</td>
                <td className="number">±{within}</td>
                <td>{inWords(rest, within)}</td>
              </tr>
            );
          })}
        </tbody>
      </Table>
    </div>
  );
}

function Findings({ findings }: { findings: StoredFinding[] }) {
  if (findings.length === 0) return <p>Nothing conspicuous.</p>;
  return (
    <ul className={style.findings}>
      {findings.map((finding, index) => (
        <li key={index}>{heldTogether(findingText(finding))}</li>
      ))}
    </ul>
  );
}

const inWords = (rest: number | null, tolerance: number): string =>
  rest === null
    ? 'alone of its kind in the line'
    : Math.abs(rest) <= tolerance
      ? 'within tolerance'
      : rest > 0
        ? '◂▸ too wide'
        : '▸◂ too tight';

const tightnessWords = (tightness: number, tolerance: number): string =>
  Math.abs(tightness) <= tolerance
    ? 'as tight as it'
    : `${signed(Math.round(tightness))} ${tightness > 0 ? 'wider' : 'tighter'} than it`;

'use client';
import { Table } from '@/app/_ui/Table';
import type { DeskLine } from '@/shared/critique/desk';
import { lettersOf } from '@/shared/critique/run';
import type { StoredFinding } from '@/shared/schemas/finding';
import type { StoredComparison, StoredMeasure } from '@/shared/schemas/stored-figures';
import { heldTogether, signed, withUnit } from '@/shared/text/number';
import { beyondHalfRange, chooseFindings } from '@/shared/scoring';
import { findingText } from '@/shared/wording/finding-words';
import style from './desk.module.css';

type Props = Pick<DeskLine, 'measure' | 'comparison' | 'across'> & {
  letters: readonly string[];
  choose: (pair: number) => void;
  chosen: number | null;
};

/** What was measured, on request: each finding in a sentence, then the pairs in numbers. */
export function Deviations({ letters, measure, comparison, across, choose, chosen }: Props) {
  if (!measure)
    return (
      <p>
        This line has not been measured yet. It is measured when it is sent; if this doesn’t change, ask the person who
        runs the server to look at the log.
      </p>
    );
  const findings = chooseFindings(measure.findings, comparison?.findings ?? []).filter(
    ({ weight }) => weight !== 'fact',
  );
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
          <>
            There is no reference for this line yet, so each pair is held against what type designers usually give it.
          </>
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
      <Table caption={captionOf(measure)} narrow>
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
              {held ? 'Deviation' : 'Beyond the usual'}
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
            const rest = against ? against.rest : beyondHalfRange(pair, measure.line.tightness);
            return (
              <tr key={pair.index} aria-current={chosen === pair.index || undefined}>
                <th scope="row">
                  <button type="button" className={style.plainButton} onClick={() => choose(pair.index)}>
                    {lettersOf(letters, { first: pair.index, last: pair.index })}
                  </button>
                </th>
                <td className="number">{signed(pair.offset)}</td>
                <td className="number">{withUnit(pair.apparentGap, '').trim()}</td>
                <td className="number">{rest === null ? '–' : signed(rest)}</td>
                <td className="number">{against ? `±${against.tolerance}` : '–'}</td>
                <td>{against ? besideReference(against) : besideUsual(pair, findings)}</td>
              </tr>
            );
          })}
        </tbody>
      </Table>
    </div>
  );
}

/** Tracking is the same on every gap, so it is said once; the column has what differs from gap to gap. */
const captionOf = ({ pairs }: StoredMeasure): string =>
  `Pairs, all in 1/1000 em; tracking ${signed(pairs[0]?.tracking ?? 0)} on every gap`;

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

const besideReference = ({ rest, within }: StoredComparison['pairs'][number]): string =>
  within ? 'within tolerance' : rest > 0 ? '◂▸ too wide' : '▸◂ too tight';

function besideUsual({ index, outside }: StoredMeasure['pairs'][number], findings: readonly StoredFinding[]): string {
  if (outside === null) return 'not judged';
  const found = findings.find(({ kind, from }) => kind === 'usual' && from === index);
  return found ? (found.direction === 'wide' ? '◂▸ wider than usual' : '▸◂ tighter than usual') : 'as usual';
}

const tightnessWords = (tightness: number, tolerance: number): string =>
  Math.abs(tightness) <= tolerance
    ? 'as tight as it'
    : `${signed(Math.round(tightness))} ${tightness > 0 ? 'wider' : 'tighter'} than it`;

import Link from 'next/link';
import { CsvLink } from '@/app/_ui/charts/chart-frame';
import { Status, When } from '@/app/_ui/Status';
import { Table } from '@/app/_ui/Table';
import { roundDeviation, roundEvenness, type TermRound } from '@/shared/class/term';
import { counted, numberText, withUnit } from '@/shared/text/number';

type Props = { rounds: readonly TermRound[]; timeZone: string; own?: boolean };

/** One row a round: what was sent and when, what was released, its state. */
export function TermTable({ rounds, timeZone, own }: Props) {
  return (
    <>
      <Table caption="The term, round by round" captionHidden>
        <thead>
          <tr>
            <th scope="col">Exercise</th>
            <th scope="col">Round</th>
            <th scope="col">Sent</th>
            <th scope="col">Mark</th>
            <th scope="col">Notes</th>
            <th scope="col" className="number">
              Deviation, 1/1000 em
            </th>
            <th scope="col" className="number">
              Unevenness, %
            </th>
          </tr>
        </thead>
        <tbody>
          {rounds.map((round) => {
            const { exercise, number, title, released, notes, silent } = round;
            const [deviation, evenness] = [roundDeviation(round), roundEvenness(round)];
            return (
              <tr key={`${exercise.id} ${number}`}>
                <th scope="row">
                  <Link href={`/exercises/${exercise.id}`}>{exercise.title}</Link>
                </th>
                <td>
                  {round.proofId ? (
                    <Link href={`/proofs/${round.proofId}`}>
                      Round {numberText(number)}
                      {title && `, ${title}`}
                    </Link>
                  ) : (
                    <>
                      Round {numberText(number)}
                      {title && `, ${title}`}
                    </>
                  )}
                </td>
                <td>
                  <Sent round={round} timeZone={timeZone} />
                </td>
                <td>
                  {released ? (
                    <>
                      {released.percent === null ? 'released without a total' : withUnit(released.percent, '%', 1)}
                      {released.marks.length > 0 && (
                        <span className="quiet">
                          {' '}
                          ({released.marks.map((mark) => `${mark.title}: ${mark.level ?? 'not marked'}`).join('; ')})
                        </span>
                      )}
                    </>
                  ) : silent === 'hidden' ? (
                    'names are hidden until it is released'
                  ) : (
                    'not released yet'
                  )}
                </td>
                <td>
                  {notes === null ? (
                    '–'
                  ) : notes.all === 0 ? (
                    'none'
                  ) : (
                    <>
                      {counted(notes.all, 'note')}, {numberText(notes.settled)} settled{own && ' when released'}
                    </>
                  )}
                </td>
                <td className="number">{deviation === null ? '–' : numberText(deviation, 1)}</td>
                <td className="number">{evenness === null ? '–' : numberText(evenness, 1)}</td>
              </tr>
            );
          })}
        </tbody>
      </Table>
      <CsvLink of="The term, round by round" fileName="term" head={csvHead} rows={rounds.map(csvRow)} />
    </>
  );
}

function Sent({ round: { sent, late, receivedAt, silent }, timeZone }: { round: TermRound; timeZone: string }) {
  if (silent === 'nothing sent') return <Status kind="waiting">nothing yet</Status>;
  return (
    <>
      <Status kind={late ? 'late' : 'done'}>
        {counted(sent, 'proof')}
        {late && `, ${counted(late.days, 'day')} late`}
      </Status>
      {receivedAt && (
        <>
          {' '}
          <When at={receivedAt} timeZone={timeZone} short />
        </>
      )}
    </>
  );
}

const csvHead = [
  'Exercise',
  'Round',
  'Proofs sent',
  'Received (UTC)',
  'Days late',
  'Total in % as released',
  'Notes',
  'Notes settled',
  'Median deviation (1/1000 em)',
  'Median unevenness (%)',
];
const csvRow = (round: TermRound) => [
  round.exercise.title,
  round.number,
  round.sent,
  round.receivedAt,
  round.late?.days ?? 0,
  round.released?.percent ?? null,
  round.notes?.all ?? null,
  round.notes?.settled ?? null,
  roundDeviation(round),
  roundEvenness(round),
];

import { LineDrawing } from '@/app/_line/LineDrawing';
import type { GapMark } from '@/shared/line/shapes';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import type { TermLine, TermRound } from '@/shared/class/term';
import { counted, numberText } from '@/shared/text/number';

/** The lines drawn small, one exercise after the other. */
export function TermLines({ rounds }: { rounds: readonly TermRound[] }) {
  return rounds.map(({ exercise, number, lines }) => (
    <section key={exercise.id} aria-label={exercise.title}>
      <h3>
        {exercise.title}, round {numberText(number)}
      </h3>
      <ul className="work-lines" role="list">
        {lines.map((line, index) => (
          <li key={index} className="work-line">
            <SheetFrame ground={line.ground} bare caption={outsideWords(line)}>
              <LineDrawing pack={line.pack} spacing={line.spacing} marks={marksOf(line)} />
            </SheetFrame>
          </li>
        ))}
      </ul>
    </section>
  ));
}

const marksOf = ({ pairs }: TermLine): GapMark[] =>
  (pairs ?? []).flatMap(({ rest, within }, gap) =>
    within ? [] : [{ gap, fault: rest < 0 ? 'tight' : 'wide', strength: 2 } as const],
  );

function outsideWords({ text, pairs }: TermLine): string {
  if (pairs === null) return `“${text}”`;
  const outside = pairs.filter(({ within }) => !within).length;
  return `“${text}”, ${outside === 0 ? 'within tolerance everywhere' : `${counted(outside, 'pair')} of ${numberText(pairs.length)} outside tolerance`}`;
}

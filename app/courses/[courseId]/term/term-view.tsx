import { BarChart } from '@/app/_ui/charts/BarChart';
import { LineChart } from '@/app/_ui/charts/LineChart';
import { EmptyState, Section } from '@/app/_ui/Page';
import { sideWords } from '@/shared/class/side-words';
import { lastRounds, roundDeviation, roundEvenness, stillMissed, type Term, type TermRound } from '@/shared/class/term';
import { grouped } from '@/shared/grouped';
import { numberText, withUnit } from '@/shared/text/number';
import { TermLines } from './term-lines';
import { TermTable } from './term-table';

/**
 * A term on one page: what was sent, how it went, what is still missed, and the lines as they are now; to be printed
 * and discussed.
 */
export function TermView({ term, own }: { term: Term; own?: boolean }) {
  const { rounds, course } = term;
  if (rounds.length === 0)
    return <EmptyState title="Nothing is posted yet">Rounds appear here once an exercise has been posted.</EmptyState>;
  const last = lastRounds(rounds);
  return (
    <>
      <Section title="Round by round">
        <TermTable rounds={rounds} timeZone={course.timeZone} own={own} />
      </Section>
      <Section title="How it went">
        <TermLine
          rounds={rounds}
          timeZone={course.timeZone}
          figure={roundDeviation}
          title="Distance from the nearest reference"
          unit="1/1000 em"
          fileName="term-deviation"
          better="nearer to the references"
        />
        <TermLine
          rounds={rounds}
          timeZone={course.timeZone}
          figure={roundEvenness}
          title="Unevenness of the lines"
          unit="%"
          fileName="term-evenness"
          better="more even"
        />
        <Missed rounds={last} />
      </Section>
      {last.length > 0 && (
        <Section
          title="The lines now"
          lead="The latest round of each exercise that may be shown. Wedges mark pairs outside tolerance: pointing in, too tight; pointing out, too wide."
        >
          <TermLines rounds={last} />
        </Section>
      )}
    </>
  );
}

type LineProps = {
  rounds: TermRound[];
  timeZone: string;
  figure: (round: TermRound) => number | null;
  title: string;
  unit: string;
  fileName: string;
  better: string;
};

/** One figure over the days on which proofs were sent, one line an exercise. */
function TermLine({ rounds, timeZone, figure, title, unit, fileName, better }: LineProps) {
  const days = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', timeZone });
  const series = [...grouped(rounds, ({ exercise }) => exercise.id).values()]
    .map((own) => ({
      name: own[0]!.exercise.title,
      points: own.flatMap((round) => {
        const y = figure(round);
        return y === null || round.receivedAt === null
          ? []
          : [{ x: Date.parse(round.receivedAt), y: Math.round(y * 100) / 100 }];
      }),
    }))
    .filter(({ points }) => points.length > 0);
  const moved = series.filter(({ points }) => points.length > 1);
  const fell = moved.filter(({ points }) => points.at(-1)!.y < points[0]!.y);
  const reading =
    moved.length === 0
      ? 'A second round of an exercise will show which way it goes.'
      : `In ${numberText(fell.length)} of ${numberText(moved.length)} exercises with several rounds the last one is ${better} than the first.`;
  return (
    <LineChart
      level={3}
      title={title}
      reading={reading}
      fileName={fileName}
      series={series}
      empty="nothing may be shown of it yet."
      x={{ label: 'Sent on', scale: 'time', words: (at) => days.format(at) }}
      y={{ label: 'Median over the round’s lines', unit, include: [0], digits: 1 }}
    />
  );
}

function Missed({ rounds }: { rounds: TermRound[] }) {
  const all = stillMissed(rounds);
  const sides = all.filter(({ outside }) => outside > 0);
  const [most] = sides;
  const share = (one: { outside: number; pairs: number }) => (100 * one.outside) / one.pairs;
  return (
    <BarChart
      level={3}
      title="Kinds of side still missed"
      fileName="term-sides"
      rowName="Sides (left letter’s right, right letter’s left)"
      reading={
        !most
          ? ''
          : `Most where ${sideWords[most.left]} meets ${sideWords[most.right]}: outside tolerance in ${numberText(most.outside)} of ${numberText(most.pairs)} gaps, ${withUnit(share(most), '%')}.`
      }
      x={{ label: 'Outside tolerance', unit: '%', digits: 0 }}
      empty={
        all.length === 0
          ? 'nothing is held against a reference yet.'
          : 'every pair is within tolerance in the last rounds.'
      }
      bars={sides.map((side) => ({
        name: `${sideWords[side.left]}, then ${sideWords[side.right]}`,
        value: share(side),
        more: [side.outside, side.pairs],
      }))}
      moreColumns={[
        { name: 'Gaps outside', digits: 0 },
        { name: 'Gaps in all', digits: 0 },
      ]}
    />
  );
}

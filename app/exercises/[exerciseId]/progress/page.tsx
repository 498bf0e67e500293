import type { Metadata } from 'next';
import { EmptyState, Page, PageHeader } from '@/app/_ui/Page';
import { BarChart } from '@/app/_ui/charts/BarChart';
import { LineChart } from '@/app/_ui/charts/LineChart';
import { getProgress } from '@/lib/class/progress';
import { forPage } from '@/lib/http/page';
import type { LineProgress } from '@/shared/class/progress';
import { numberText } from '@/shared/text/number';

type Props = { params: Promise<{ exerciseId: string }> };

export const metadata: Metadata = { title: 'Progress' };

/**
 * From round to round: how far the class is from the references, how even its lines are, and in which direction the
 * pairs moved.
 */
export default async function ProgressPage({ params }: Props) {
  const { exerciseId } = await params;
  const { course, exercise, rounds } = await forPage(getProgress, { exerciseId });
  return (
    <Page width="wide">
      <PageHeader
        title="From round to round"
        trail={[
          { href: `/courses/${course.id}`, label: course.title },
          { href: `/exercises/${exercise.id}`, label: exercise.title },
          { href: `/exercises/${exercise.id}/class`, label: 'Class' },
        ]}
        lead="What the class sees now that it did not see before. Lines that were sent in one round only say nothing of progress."
      />
      {rounds.length === 0 ? (
        <EmptyState title="Nothing sent yet">
          A round appears here once its proofs arrive, with the next one beside it.
        </EmptyState>
      ) : (
        <ProgressCharts rounds={rounds} />
      )}
    </Page>
  );
}

type Round = { number: number; title: string; lines: LineProgress[] };

/** The charts of progress, each with its numbers. */
function ProgressCharts({ rounds }: { rounds: Round[] }) {
  const names = lineNames(rounds);
  const series = (figure: 'deviation' | 'evenness') =>
    [...names]
      .map(([specimenId, name]) => ({
        name,
        points: rounds.map(({ number, lines }) => {
          const spread = lines.find((line) => line.specimenId === specimenId)?.[figure] ?? null;
          return { x: number, y: spread && rounded(spread.median) };
        }),
      }))
      .filter(({ points }) => points.some(({ y }) => y !== null));
  const moves = rounds.flatMap(({ number, lines }) =>
    lines.flatMap(({ specimenId, moved }) =>
      moved ? [{ name: `Round ${number}, ${names.get(specimenId)}`, ...moved }] : [],
    ),
  );
  const [deviation, evenness] = [series('deviation'), series('evenness')];
  const x = { label: 'Round', scale: 'round' as const, words: (value: number) => `Round ${numberText(value)}` };
  return (
    <>
      <LineChart
        level={2}
        title="Distance from the nearest reference"
        fileName="progress-deviation"
        reading={changeWords(
          deviation,
          (by) => `${numberText(by, 1)} thousandths of an em`,
          'nearer to the references',
          'farther from them',
        )}
        x={x}
        y={{
          label: 'Median over the students of their median absolute deviation',
          unit: '1/1000 em',
          include: [0],
          digits: 1,
        }}
        series={deviation}
        empty="there is no reference to compare the lines with."
      />
      <LineChart
        level={2}
        title="Unevenness of the lines"
        fileName="progress-evenness"
        reading={changeWords(evenness, (by) => `${numberText(by, 1)} percentage points`, 'more even', 'less even')}
        x={x}
        y={{
          label: 'Median over the students: how far gaps stray from the line’s own middle',
          unit: '%',
          include: [0],
          digits: 1,
        }}
        series={evenness}
        empty="the lines are too short to be called even or uneven."
      />
      <BarChart
        level={2}
        title="Which way the pairs moved since the round before"
        fileName="progress-moves"
        rowName="Round and line"
        reading={moveWords(moves)}
        x={{ label: 'Came nearer to the reference', unit: '%', digits: 0, include: [100] }}
        bars={moves.map(({ name, nearer, farther, same }) => ({
          name,
          value: (100 * nearer) / (nearer + farther + same),
          more: [nearer, farther, same],
        }))}
        moreColumns={['Pairs nearer', 'Pairs farther', 'Pairs as they were'].map((name) => ({ name, digits: 0 }))}
        empty="no line has been sent in two rounds yet."
      />
    </>
  );
}

/** A name for each line, by specimen; lines of one text are distinguished by their position. */
function lineNames(rounds: Round[]): Map<string, string> {
  const texts = new Map(rounds.flatMap(({ lines }) => lines.map(({ specimenId, text }) => [specimenId, text])));
  const all = [...texts.values()];
  return new Map(
    [...texts].map(([specimenId, text], index) => [
      specimenId,
      all.filter((other) => other === text).length > 1 ? `${text} (line ${index + 1})` : text,
    ]),
  );
}

const rounded = (value: number): number => Math.round(value * 100) / 100;

function changeWords(
  series: { name: string; points: { y: number | null }[] }[],
  say: (by: number) => string,
  better: string,
  worse: string,
): string {
  const both = series.flatMap(({ name, points }) => {
    const known = points.flatMap(({ y }) => (y === null ? [] : [y]));
    return known.length > 1 ? [{ name, change: known.at(-1)! - known[0]! }] : [];
  });
  if (both.length === 0) return 'One round so far: nothing to hold it against.';
  const [fell, rose] = [both.filter(({ change }) => change < 0), both.filter(({ change }) => change > 0)];
  const most = [...fell].sort((one, other) => one.change - other.change)[0];
  return `Since the first round ${numberText(fell.length)} of ${both.length} lines are ${better}${rose.length > 0 ? `, ${numberText(rose.length)} ${worse}` : ''}${most ? `; most of all ${most.name}, by ${say(-most.change)}` : ''}.`;
}

function moveWords(moves: { nearer: number; farther: number; same: number }[]): string {
  const total = (key: 'nearer' | 'farther' | 'same') => moves.reduce((sum, each) => sum + each[key], 0);
  const all = total('nearer') + total('farther') + total('same');
  return all === 0
    ? ''
    : `Of ${numberText(all)} pairs of students who set the line in both rounds, ${numberText(total('nearer'))} came nearer, ${numberText(total('farther'))} went farther, ${numberText(total('same'))} stayed.`;
}

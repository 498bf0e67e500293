import { LineChart } from '@/app/_ui/charts/LineChart';
import { csvOf } from '@/shared/text/csv';
import { numberText, thinSpace } from '@/shared/text/number';
import type { PracticeKind, PracticeResult, PracticeTask } from '@/shared/schemas/practice';
import styles from './practice.module.css';

const kindWords: Record<PracticeKind, string> = {
  any: 'every kind',
  straight: 'straight sides',
  round: 'a round side',
  open: 'a slanted or open side',
};
const taskWords: Record<PracticeTask, string> = {
  'gap off': 'Which gap is off',
  'more even': 'Which is the more even',
};
const day = (at: number) => new Date(at).toLocaleDateString('en-GB', { day: 'numeric', month: 'short' });

/** The sittings over the term, a drawing for each question, a line for each kind of side and size. */
export function ResultsOverTime({ results }: { results: PracticeResult[] }) {
  if (results.length === 0) return null;
  const tasks = (Object.keys(taskWords) as PracticeTask[]).filter((task) =>
    results.some((result) => result.task === task),
  );
  return (
    <section aria-label="Your sittings" className={styles.results}>
      <h2>Your sittings</h2>
      {tasks.map((task) => (
        <TaskOverTime key={task} task={task} results={results.filter((result) => result.task === task)} />
      ))}
    </section>
  );
}

/** A chart tells twelve lines apart: the ones sat at last are drawn, and the reading says so. */
const MOST_LINES = 12;

function TaskOverTime({ task, results }: { task: PracticeTask; results: PracticeResult[] }) {
  const groups = new Map<string, PracticeResult[]>();
  for (const result of results) {
    const name = `${kindWords[result.kind]}, ${numberText(result.size, 1)}${thinSpace}px`;
    groups.set(name, [...(groups.get(name) ?? []), result]);
  }
  const lately = (group: PracticeResult[]) => group.at(-1)?.at ?? '';
  const all = [...groups].sort(([, one], [, other]) => (lately(one) > lately(other) ? -1 : 1));
  const drawn = all.slice(0, MOST_LINES);
  return (
    <LineChart
      title={`${taskWords[task]}: smallest fault seen`}
      reading={readingOf(drawn, all.length)}
      fileName={`practice-${task.replaceAll(' ', '-')}`}
      level={3}
      csvHref={`data:text/csv;charset=utf-8,${encodeURIComponent(csvFrom(results))}`}
      x={{ label: 'Day', scale: 'time', words: day }}
      y={{ label: 'Smallest fault seen', unit: '1/1000 em', include: [0], digits: 0 }}
      series={drawn.map(([name, group]) => ({
        name,
        points: group.map(({ at, fault }) => ({ x: Date.parse(at), y: fault })),
      }))}
    />
  );
}

/** Every sitting with its instant, which a drawing by days does not show. */
const csvFrom = (results: PracticeResult[]): string =>
  csvOf(
    ['Ended (UTC)', 'Question', 'Gaps with', 'Size (px)', 'Smallest fault seen (1/1000 em)', 'Looks'],
    results.map(({ at, task, kind, size, fault, trials }) => [
      at,
      taskWords[task],
      kindWords[kind],
      size,
      fault,
      trials || null,
    ]),
  );

/** What became of each kind from its first sitting to its last; lower is finer. */
function readingOf(groups: [string, PracticeResult[]][], count: number): string {
  const said = groups
    .filter(([, group]) => group.length > 1)
    .slice(0, 3)
    .map(([name, group]) => {
      const [first, last] = [group[0]!.fault, group.at(-1)!.fault];
      return `With ${name}: ${numberText(first)} at first, ${numberText(last)} at last.`;
    });
  const left = count > groups.length ? [`${count - groups.length} older kinds are not drawn.`] : [];
  return [
    'Lower is finer.',
    ...(said.length > 0 ? said : ['One sitting says little; it differs from day to day.']),
    ...left,
  ].join(' ');
}

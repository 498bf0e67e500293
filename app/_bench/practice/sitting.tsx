'use client';

import { useRef, useState } from 'react';
import { LineChart } from '@/app/_ui/charts/LineChart';
import { drawQuestion, leastMove } from '@/shared/practice/moved-gap';
import { numbersFrom } from '@/shared/practice/numbers-from';
import { answerStaircase, isFinished, startStaircase, threshold } from '@/shared/practice/staircase';
import type { PracticeKind, PracticeResult, PracticeTask } from '@/shared/schemas/practice';
import { csvOf } from '@/shared/text/csv';
import { counted, numberText, thinSpace, withUnit } from '@/shared/text/number';
import { perMilleEm } from '@/shared/wording/lengths';
import type { EyePracticeProps } from '../props';
import { newKey } from '../session/device';
import styles from './practice.module.css';
import { Question, type Sheet } from './question';
import { type ResultsState, useResults } from './results';

/** The first move is too large to miss, in 1/1000 em. */
const START = 100;
const MOST = 220;

/** One sitting: questions until the staircase has turned often enough, then how small a move the person saw. */
export function Sitting({ packs, personKey, results: stored, save }: EyePracticeProps) {
  const [sheet, setSheet] = useState<Sheet | null>(null);
  const { results, state, add, send } = useResults(personKey, stored, save);
  const [ended, setEnded] = useState<PracticeResult | null>(null);
  const random = useRef(Math.random);

  function begin(task: PracticeTask, kind: PracticeKind, size: number) {
    random.current = numbersFrom(Math.floor(Math.random() * 2 ** 32));
    const least = leastMove(packs, kind);
    const look = drawQuestion(packs, kind, START, random.current);
    if (!look || least === null) return;
    setEnded(null);
    const stair = startStaircase(Math.max(START, least), { least, most: Math.max(MOST, least) });
    setSheet({ task, kind, size, stair, unmoved: { shown: 0, seen: 0 }, look, answer: null });
  }

  /** A question without a move doesn't change the size of the next move. */
  function answer(right: boolean) {
    if (!sheet || sheet.answer) return;
    const { look, stair, unmoved } = sheet;
    setSheet(
      look.gap === null
        ? {
            ...sheet,
            answer: { right },
            unmoved: { shown: unmoved.shown + 1, seen: unmoved.seen + (right ? 0 : 1) },
          }
        : { ...sheet, answer: { right }, stair: answerStaircase(stair, right) },
    );
  }

  function next() {
    if (!sheet) return;
    const { task, kind, size, stair, unmoved } = sheet;
    const fault = threshold(stair);
    if (isFinished(stair) && fault !== null) {
      const result = {
        requestKey: newKey(),
        at: new Date().toISOString(),
        task,
        kind,
        size,
        fault: Math.round(fault),
        trials: stair.trials + unmoved.shown,
        turns: [...stair.turns],
        unmoved,
      };
      add(result);
      setEnded(result);
      return setSheet(null);
    }
    const look = drawQuestion(packs, kind, stair.level, random.current);
    setSheet(isFinished(stair) || !look ? null : { ...sheet, look, answer: null });
  }

  if (sheet) return <Question sheet={sheet} answer={answer} next={next} leave={() => setSheet(null)} />;
  return (
    <div className={styles.practice}>
      {ended && (
        <p className="notice" role="status">
          You saw moves down to about {perMilleEm(ended.fault)}, at {withUnit(ended.size, 'px')}.{' '}
          {unmovedWords(ended.unmoved)} Smaller is finer; it differs from day to day, and with the size.
        </p>
      )}
      <Begin begin={begin} />
      <StateWords state={state} send={send} any={results.length > 0} />
      <ResultsOverTime results={results} />
    </div>
  );
}

/** @example 'Where nothing was moved you saw that 7 of 8 times.' */
function unmovedWords(unmoved: PracticeResult['unmoved']): string {
  if (!unmoved || unmoved.shown === 0) return '';
  return `Where nothing was moved you saw that ${unmoved.shown - unmoved.seen} of ${counted(unmoved.shown, 'time')}.`;
}

/** Where the results are stored, and what to do when they haven't reached the server. */
function StateWords({ state, send, any }: { state: ResultsState; send: () => void; any: boolean }) {
  const words: Record<ResultsState, string> = {
    saved: any ? 'All your results are kept with your account.' : '',
    sending: 'Your results are on this device and are being sent to your account …',
    unreachable: 'No answer from the server. Your results are kept on this device and will be sent when it answers.',
    'signed out':
      'Your session has ended. Your results are kept on this device; sign in again in another tab, then send them.',
    refused: 'Your results couldn’t be saved to the server. They are kept on this device.',
    'this device only': any ? 'Your results are kept on this device only.' : '',
  };
  const waits = state === 'unreachable' || state === 'signed out' || state === 'refused';
  return (
    <p className={styles.row} role="status" data-state={state}>
      <span className="quiet note-size">{words[state]}</span>
      {waits && (
        <button type="button" className="button button-small" onClick={send}>
          Send them now
        </button>
      )}
    </p>
  );
}

const SIZES = [24, 48, 96];

/** Chooses what to practise, and starts. */
function Begin({ begin }: { begin: (task: PracticeTask, kind: PracticeKind, size: number) => void }) {
  const [kind, setKind] = useState<PracticeKind>('any');
  const [size, setSize] = useState(48);
  return (
    <section aria-label="Begin" className={styles.begin}>
      <p>
        You see lines as their designers kerned them. In most we opened or closed one gap, further than designers
        usually do; in some we moved nothing. The move gets smaller as long as you see it. A sitting takes about fifty
        looks.
      </p>
      <p className={styles.row}>
        <label htmlFor="practice-kind">Gaps</label>
        <select
          id="practice-kind"
          className="input"
          value={kind}
          onChange={(event) => setKind(event.currentTarget.value as PracticeKind)}
        >
          <option value="any">of every kind</option>
          <option value="straight">between straight sides</option>
          <option value="round">with a round side</option>
          <option value="open">with a slanted or open side</option>
        </select>
        <label htmlFor="practice-size">Size</label>
        <select
          id="practice-size"
          className="input"
          value={size}
          onChange={(event) => setSize(Number(event.currentTarget.value))}
        >
          {SIZES.map((one) => (
            <option key={one} value={one}>
              {one} px
            </option>
          ))}
        </select>
      </p>
      <p className={styles.row}>
        <button type="button" className="button button-main" onClick={() => begin('which line', kind, size)}>
          Which line was changed?
        </button>
        <button type="button" className="button" onClick={() => begin('which gap', kind, size)}>
          Which gap was moved?
        </button>
      </p>
    </section>
  );
}

const kindWords: Record<PracticeKind, string> = {
  any: 'every kind',
  straight: 'straight sides',
  round: 'a round side',
  open: 'a slanted or open side',
};
const taskWords: Record<PracticeTask, string> = {
  'which gap': 'Which gap was moved',
  'which line': 'Which line was changed',
  'gap off': 'Which gap is off (lines made even by measure)',
  'more even': 'Which is the more even (lines made even by measure)',
};
const day = (at: number) => new Date(at).toLocaleDateString('en-GB', { day: 'numeric', month: 'short' });

/** The sittings over the term: a chart for each question, a line for each kind of side and size. */
function ResultsOverTime({ results }: { results: PracticeResult[] }) {
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

/** A chart can tell twelve lines apart: the most recent ones are drawn, and the text under it says so. */
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
      title={`${taskWords[task]}: smallest move seen`}
      reading={readingOf(drawn, all.length)}
      fileName={`practice-${task.replaceAll(' ', '-')}`}
      level={3}
      csvHref={`data:text/csv;charset=utf-8,${encodeURIComponent(csvFrom(results))}`}
      x={{ label: 'Day', scale: 'time', words: day }}
      y={{ label: 'Smallest move seen', unit: '1/1000 em', include: [0], digits: 0 }}
      series={drawn.map(([name, group]) => ({
        name,
        points: group.map(({ at, fault }) => ({ x: Date.parse(at), y: fault })),
      }))}
    />
  );
}

/** Every sitting with its time, which a chart by days doesn't show. */
const csvFrom = (results: PracticeResult[]): string =>
  csvOf(
    [
      'Ended (UTC)',
      'Question',
      'Gaps with',
      'Size (px)',
      'Smallest move seen (1/1000 em)',
      'Looks',
      'Looks without a move',
      'A move seen in them',
    ],
    results.map(({ at, task, kind, size, fault, trials, unmoved }) => [
      at,
      taskWords[task],
      kindWords[kind],
      size,
      fault,
      trials || null,
      unmoved?.shown ?? null,
      unmoved?.seen ?? null,
    ]),
  );

/** Each kind from its first sitting to its last; lower is finer. */
function readingOf(groups: [string, PracticeResult[]][], count: number): string {
  const message = groups
    .filter(([, group]) => group.length > 1)
    .slice(0, 3)
    .map(([name, group]) => {
      const [first, last] = [group[0]!.fault, group.at(-1)!.fault];
      return `With ${name}: ${numberText(first)} at first, ${numberText(last)} at last.`;
    });
  const left = count > groups.length ? [`${count - groups.length} older kinds are not drawn.`] : [];
  return [
    'Lower is finer.',
    ...(message.length > 0 ? message : ['One sitting says little; it differs from day to day.']),
    ...left,
  ].join(' ');
}

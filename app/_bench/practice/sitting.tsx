'use client';
import { useState } from 'react';
import { answerStaircase, isFinished, startStaircase, threshold } from '@/shared/practice/staircase';
import type { PracticeKind, PracticeResult, PracticeTask } from '@/shared/schemas/practice';
import { numberText } from '@/shared/text/number';
import type { EyePracticeProps } from '../props';
import { newKey } from '../session/device';
import { Begin } from './begin';
import { Question, type Sheet } from './question';
import { ResultsOverTime } from './results-over-time';
import { drawTrial } from './trial';
import { useResults, type Keeping } from './use-results';
import styles from './practice.module.css';

/** Begins with a fault that nobody misses, in 1/1000 em. */
const START = 100;
const LIMITS = { least: 2, most: 220 };

/** One sitting: questions until the staircase has turned often enough, then how small a fault was seen. */
export function Sitting({ packs, personKey, results: kept, save }: EyePracticeProps) {
  const [sheet, setSheet] = useState<Sheet | null>(null);
  const { results, keeping, add, send } = useResults(personKey, kept, save);
  const [ended, setEnded] = useState<PracticeResult | null>(null);

  function begin(task: PracticeTask, kind: PracticeKind, size: number) {
    const trial = drawTrial(packs, kind, START, Math.random);
    if (!trial) return;
    setEnded(null);
    setSheet({ task, kind, size, stair: startStaircase(START, LIMITS), trial, answer: null });
  }

  function answer(right: boolean) {
    if (!sheet || sheet.answer) return;
    setSheet({ ...sheet, answer: { right }, stair: answerStaircase(sheet.stair, right) });
  }

  function next() {
    if (!sheet) return;
    const { task, kind, size, stair } = sheet;
    const fault = threshold(stair);
    if (isFinished(stair) && fault !== null) {
      const result = {
        requestKey: newKey(),
        at: new Date().toISOString(),
        task,
        kind,
        size,
        fault: Math.round(fault),
        trials: stair.trials,
        turns: [...stair.turns],
      };
      add(result);
      setEnded(result);
      return setSheet(null);
    }
    const trial = drawTrial(packs, kind, stair.level, Math.random);
    setSheet(isFinished(stair) || !trial ? null : { ...sheet, trial, answer: null });
  }

  if (sheet) return <Question sheet={sheet} answer={answer} next={next} leave={() => setSheet(null)} />;
  return (
    <div className={styles.practice}>
      {ended && (
        <p className="notice" role="status">
          You saw faults down to about {numberText(ended.fault)} thousandths of an em at {ended.size} px. Smaller is
          finer; it differs from day to day, and with the size.
        </p>
      )}
      <Begin begin={begin} />
      <KeepingWords keeping={keeping} send={send} any={results.length > 0} />
      <ResultsOverTime results={results} />
    </div>
  );
}

/** Where the results are, and what to do when they are not yet where they belong. */
function KeepingWords({ keeping, send, any }: { keeping: Keeping; send: () => void; any: boolean }) {
  const words: Record<Keeping, string> = {
    kept: any ? 'All your results are kept with your account.' : '',
    sending: 'Your results are on this device and on their way to your account …',
    unreachable: 'No answer from the server. Your results are kept on this device and will be sent when it answers.',
    'signed out':
      'Your session has ended. Your results are kept on this device; sign in again in another tab, then send them.',
    refused: 'The server did not take your results. They are kept on this device.',
    'this device only': any ? 'Your results are kept on this device only.' : '',
  };
  const waits = keeping === 'unreachable' || keeping === 'signed out' || keeping === 'refused';
  return (
    <p className={styles.row} role="status" data-keeping={keeping}>
      <span className="quiet note-size">{words[keeping]}</span>
      {waits && (
        <button type="button" className="button button-small" onClick={send}>
          Send them now
        </button>
      )}
    </p>
  );
}

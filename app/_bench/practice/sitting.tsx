'use client';
import { useState } from 'react';
import { LineDrawing } from '@/app/_ui/LineDrawing';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import { pairLetters } from '@/shared/editing/pair-words';
import type { PracticeKind } from '@/shared/practice/even-line';
import { answerStaircase, isFinished, startStaircase, threshold, type Staircase } from '@/shared/practice/staircase';
import { numberText } from '@/shared/text/number';
import type { EyePracticeProps } from '../props';
import { keepResult, readResults, type EyeResult } from './results';
import { Results } from './results-plot';
import { drawTrial, type Task, type Trial } from './trial';
import styles from './practice.module.css';

/** Begins with a fault that nobody misses, in 1/1000 em. */
const START = 100;
const LIMITS = { least: 2, most: 220 };
const SIZES = [24, 48, 96];

type Sheet = { task: Task; kind: PracticeKind; size: number; stair: Staircase; trial: Trial; answer: { right: boolean } | null };

/** One sitting: questions until the staircase has turned often enough, then how small a fault was seen. */
export function Sitting({ packs, personKey }: EyePracticeProps) {
  const [sheet, setSheet] = useState<Sheet | null>(null);
  const [results, setResults] = useState<EyeResult[]>(() => readResults(personKey));
  const [ended, setEnded] = useState<EyeResult | null>(null);

  function begin(task: Task, kind: PracticeKind, size: number) {
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
    const fault = threshold(sheet.stair);
    if (isFinished(sheet.stair) && fault !== null) {
      const result = { at: new Date().toISOString(), task: sheet.task, kind: sheet.kind, size: sheet.size, fault: Math.round(fault) };
      setResults(keepResult(personKey, result));
      setEnded(result);
      return setSheet(null);
    }
    const trial = drawTrial(packs, sheet.kind, sheet.stair.level, Math.random);
    setSheet(isFinished(sheet.stair) || !trial ? null : { ...sheet, trial, answer: null });
  }

  if (sheet) return <Question sheet={sheet} answer={answer} next={next} leave={() => setSheet(null)} />;
  return (
    <div className={styles.practice}>
      {ended && <p className="notice" role="status">You saw faults down to about {numberText(ended.fault)} thousandths of an em at {ended.size} px. Smaller is finer; it differs from day to day, and with the size.</p>}
      <Begin begin={begin} />
      <Results results={results} />
    </div>
  );
}

function Begin({ begin }: { begin: (task: Task, kind: PracticeKind, size: number) => void }) {
  const [kind, setKind] = useState<PracticeKind>('any');
  const [size, setSize] = useState(48);
  return (
    <section aria-label="Begin" className={styles.begin}>
      <p>A line has one gap that is too wide or too tight. The fault gets smaller as long as you see it. A sitting takes about forty looks.</p>
      <p className={styles.row}>
        <label htmlFor="practice-kind">Gaps</label>
        <select id="practice-kind" className="input" value={kind} onChange={(event) => setKind(event.currentTarget.value as PracticeKind)}>
          <option value="any">of every kind</option>
          <option value="straight">between straight sides</option>
          <option value="round">with a round side</option>
          <option value="open">with a slanted or open side</option>
        </select>
        <label htmlFor="practice-size">Size</label>
        <select id="practice-size" className="input" value={size} onChange={(event) => setSize(Number(event.currentTarget.value))}>
          {SIZES.map((one) => <option key={one} value={one}>{one} px</option>)}
        </select>
      </p>
      <p className={styles.row}>
        <button type="button" className="button button-main" onClick={() => begin('more even', kind, size)}>Which is the more even?</button>
        <button type="button" className="button" onClick={() => begin('gap off', kind, size)}>Which gap is off?</button>
      </p>
    </section>
  );
}

function Question({ sheet, answer, next, leave }: { sheet: Sheet; answer: (right: boolean) => void; next: () => void; leave: () => void }) {
  const { task, trial, size } = sheet;
  const answered = sheet.answer;
  const { left, right } = pairLetters(trial.pack, trial.gap);
  const said = `${trial.fault > 0 ? 'too wide' : 'too tight'} by ${numberText(Math.abs(trial.fault))} thousandths`;
  const line = (spacing: Trial['even']) => (
    <SheetFrame scrolls ground="light"><LineDrawing pack={trial.pack} spacing={spacing} size={{ value: size, unit: 'px' }} label={null} /></SheetFrame>
  );
  return (
    <section className={styles.practice} aria-label="Question">
      <h2>{task === 'more even' ? 'Which of the two is the more even?' : 'Which gap is off?'}</h2>
      {task === 'more even' ? (
        <>
          {line(trial.evenAbove ? trial.even : trial.faulty)}
          <p><button type="button" className="button" disabled={answered !== null} onClick={() => answer(trial.evenAbove)}>The upper one</button></p>
          {line(trial.evenAbove ? trial.faulty : trial.even)}
          <p><button type="button" className="button" disabled={answered !== null} onClick={() => answer(!trial.evenAbove)}>The lower one</button></p>
        </>
      ) : (
        <>
          {line(trial.faulty)}
          <div className={styles.row} role="group" aria-label="Gaps of the line, in order">
            {trial.faulty.offsets.map((_, gap) => {
              const pair = pairLetters(trial.pack, gap);
              return pair.wordSpace ? null : <button key={gap} type="button" className="button button-small" disabled={answered !== null} onClick={() => answer(gap === trial.gap)}>{pair.left}{'\u200A'}{pair.right}</button>;
            })}
          </div>
        </>
      )}
      <p role="status" className={styles.said}>{answered ? `${answered.right ? 'Yes' : 'No'}: the gap between “${left}” and “${right}”${task === 'more even' ? ` ${trial.evenAbove ? 'below' : 'above'}` : ''} is ${said}.` : ''}</p>
      <p className={styles.row}>
        {answered && <button type="button" className="button button-main" autoFocus onClick={next}>Next</button>}
        <button type="button" className="button button-text" onClick={leave}>Leave off</button>
        <span className="quiet note-size">look {sheet.stair.trials + (answered ? 0 : 1)}</span>
      </p>
    </section>
  );
}

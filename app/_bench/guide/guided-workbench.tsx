'use client';

import { useEffect, useMemo, useRef, useState, useSyncExternalStore } from 'react';
import type { SpacingDocument } from '@/shared/editing/document';
import { pairLetters } from '@/shared/editing/pair-words';
import { prepareLine } from '@/shared/measure/prepared-line';
import { excessOf, opennessOf } from '../openness';
import type { GuidedLineProps } from '../props';
import type { BenchSession } from '../session/session';
import { type BenchState, chosenRun, current } from '../session/state';
import { Workbench } from '../workbench';
import styles from './guide.module.css';

/** A short first line that teaches by doing. It can be left at any time and never asks for the same thing twice. */
export function GuidedWorkbench({ pack, personKey, size, ground, onDone }: GuidedLineProps) {
  const line = useMemo(() => planLine(pack), [pack]);
  const [session, setSession] = useState<BenchSession | null>(null);
  const ended = useRef(false);
  const end = (how: 'done' | 'skipped') => {
    if (ended.current) return;
    ended.current = true;
    void onDone(how);
  };
  return (
    <Workbench
      place={
        <>
          <h1>A first line</h1>
          <p>This is practice: nothing you do here is sent.</p>
        </>
      }
      margin={<div className={styles.guide}>{session && <Steps session={session} line={line} end={end} />}</div>}
      mode="trial"
      pack={pack}
      size={size}
      ground={ground}
      spacing={{ tracking: line.start.tracking, offsets: [...line.start.offsets] }}
      version={0}
      // Its own entry in the journal, so that a reload goes on from here.
      draftId={`guided-line/${pack.text}`}
      personKey={personKey}
      tells="nothing"
      save={null}
      onSession={setSession}
    />
  );
}

function Steps({
  session,
  line,
  end,
}: {
  session: BenchSession;
  line: GuideLine;
  end: (how: 'done' | 'skipped') => void;
}) {
  const [step, setStep] = useState(0);
  // A finished step stays finished, whatever is changed afterwards.
  const [reached, setReached] = useState(-1);
  const heading = useRef<HTMLHeadingElement>(null);
  const now = guideSteps[step]!;
  const met = useSyncExternalStore(
    session.store.subscribe,
    () => now.done?.(session.store.get(), line) ?? false,
    () => false,
  );
  const done = reached >= step || met;
  if (met && reached < step) setReached(step);
  useEffect(() => {
    if (step > 0) heading.current?.focus();
  }, [step]);
  const last = step === guideSteps.length - 1;
  return (
    <section className={styles.steps} aria-label="First line">
      <p className={styles.count}>
        {step + 1} of {guideSteps.length}
      </p>
      <h2 ref={heading} tabIndex={-1}>
        {now.title}
      </h2>
      {now.says(line).map((words) => (
        <p key={words}>{words}</p>
      ))}
      <p role="status" className={styles.then}>
        {done ? now.then(line) : ''}
      </p>
      <p className={styles.go}>
        {last ? (
          <button type="button" className="button button-main" onClick={() => end('done')}>
            Start with my own lines
          </button>
        ) : (
          <button type="button" className={`button ${done ? 'button-main' : ''}`} onClick={() => setStep(step + 1)}>
            {done || !now.done ? 'Next' : 'Next without it'}
          </button>
        )}
        {!last && (
          <button type="button" className="button button-text" onClick={() => end('skipped')}>
            Leave the guide
          </button>
        )}
      </p>
    </section>
  );
}

/**
 * Chooses two gaps of a line and makes every gap even by the measure, so that the gap opened next is the only fault.
 * The first gap to look at is never the faulty one.
 */
function planLine(pack: GuidedLineProps['pack']): GuideLine {
  const line = prepareLine(pack);
  const count = pack.builtIn.length;
  const untouched = { tracking: 0, offsets: new Array<number>(count).fill(0) };
  const openness = opennessOf(line, untouched);
  const even = untouched.offsets.map((_, pair) =>
    Math.max(-200, Math.min(200, -(excessOf(line, untouched, openness, pair) ?? 0))),
  );
  const letters = line.pairs.map((_, pair) => pair).filter((pair) => line.pairs[pair]?.wordSpace === 0);
  const loose = letters[Math.floor((2 * letters.length) / 3)] ?? Math.max(0, count - 1);
  const first = letters.find((pair) => pair > 0 && pair !== loose) ?? 0;
  const name = (gap: number) => {
    const { left, right } = pairLetters(pack, gap);
    return `“${left}${right}”`;
  };
  return {
    first,
    loose,
    letters: name,
    start: { tracking: 0, offsets: even.map((offset, pair) => (pair === loose ? offset + TOO_LOOSE : offset)) },
  };
}

/** What the guide needs to know of its line. */
export type GuideLine = {
  /** The gap to look at first, its letters, and the gap made too wide that is to be found. */
  readonly first: number;
  readonly loose: number;
  readonly letters: (gap: number) => string;
  readonly start: SpacingDocument;
};

type GuideStep = {
  readonly title: string;
  readonly says: (line: GuideLine) => readonly string[];
  /** Whether the step has been done; null = it asks for nothing and can be passed at any time. */
  readonly done: ((state: BenchState, line: GuideLine) => boolean) | null;
  /** Shown once the step is done. */
  readonly then: (line: GuideLine) => string;
};

/** How far the faulty gap is opened at first, and how near to even it must be brought, 1/1000 em. */
const TOO_LOOSE = 110;
const NEAR = 35;
/** A gap must move at least this far to count as tried. */
const TRIED = 15;

/** The first line: what a gap is, what an offset is, what a gap that is too wide looks like. */
const guideSteps: readonly GuideStep[] = [
  {
    title: 'A gap',
    says: (line) => [
      `The white between two letters is a gap. It is the whole white, from top to bottom, and not only the closest spot.`,
      `Choose the gap in ${line.letters(line.first)}: point at it in the large line, or press Enter until the ticks mark it.`,
    ],
    done: ({ chosen }, line) => chosen.head === line.first,
    then: () => 'That is it. The two ticks show where you are, here and in the line at its true size above.',
  },
  {
    title: 'An offset',
    says: () => [
      'Now change it. Drag the gap to the right or the left, or press the arrow keys: up and right open, down and left close.',
      'Look at what happens to the letters after it.',
    ],
    done: (state, line) =>
      Math.abs((current(state).offsets[line.first] ?? 0) - (line.start.offsets[line.first] ?? 0)) >= TRIED &&
      !state.history.gesture,
    then: () =>
      'Everything to the right moved along, as it does when a line is set. What you added or removed is the offset of this gap. It is counted in thousandths of an em, and an em is as large as the type. Undo reverses it.',
  },
  {
    title: 'Too wide',
    says: () => [
      'One gap in this line is too wide: it holds more white than the others, and the word falls apart there.',
      'Find it and choose it. It helps to half close your eyes, or to switch on Blurred or White between.',
    ],
    done: (state, line) => chosenRun(state).first <= line.loose && chosenRun(state).last >= line.loose,
    then: (line) => `Yes, ${line.letters(line.loose)}.`,
  },
  {
    title: 'Even',
    says: (line) => [
      `Close ${line.letters(line.loose)} until it holds about as much white as the other gaps.`,
      'Trust your eye. Look at the small line as well: it tells more than the large one.',
    ],
    done: (state, line) =>
      Math.abs((current(state).offsets[line.loose] ?? 0) - ((line.start.offsets[line.loose] ?? 0) - TOO_LOOSE)) <=
        NEAR && !state.history.gesture,
    then: () => 'Now it matches the others. Two people may stop at slightly different places, and both can be right.',
  },
  {
    title: 'Ways of looking',
    says: () => [
      'Under the line are ways of looking. Turn the line on its head, blur it, or see three letters at a time: each of them makes you see white and not words.',
      'That is all there is to know. The rest is looking.',
    ],
    done: null,
    then: () => '',
  },
];

'use client';
import { useEffect, useMemo, useRef, useState, useSyncExternalStore } from 'react';
import { pairLetters } from '@/shared/editing/pair-words';
import { lineArt } from '../drawing/art';
import { excessOf, opennessOf } from '../openness';
import type { GuidedLineProps } from '../props';
import type { BenchSession } from '../session/session';
import { Workbench } from '../workbench';
import { guideSteps, TOO_LOOSE, type GuideLine } from './steps';
import styles from './guide.module.css';

/** A short first line that teaches by doing. It can be left at any time and asks for nothing twice. */
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
    <div className={styles.guide}>
      {session && <Steps session={session} line={line} end={end} />}
      <Workbench
        mode="practice"
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
    </div>
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
  // A step that was done stays done, though the hand moves on.
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
            Begin with my own lines
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
 * Chooses two gaps of a line and sets every gap even by the measure, so that the one that is then opened is the only fault.
 * The first gap to look at is never the faulty one.
 */
function planLine(pack: GuidedLineProps['pack']): GuideLine {
  const { line } = lineArt(pack);
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

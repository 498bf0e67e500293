import { type KeyboardEvent, type MouseEvent, useRef, useState } from 'react';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import { pairLetters } from '@/shared/editing/pair-words';
import { type PlacedLine, placeLetters } from '@/shared/outline/place-letters';
import { evenOffsets, gapsOfKind } from '@/shared/practice/even-line';
import type { Staircase } from '@/shared/practice/staircase';
import type { Pack } from '@/shared/schemas/pack';
import type { PracticeKind, PracticeTask } from '@/shared/schemas/practice';
import type { Spacing } from '@/shared/schemas/spacing';
import { numberText } from '@/shared/text/number';
import styles from './practice.module.css';

export type Sheet = {
  task: PracticeTask;
  kind: PracticeKind;
  size: number;
  stair: Staircase;
  trial: Trial;
  answer: { right: boolean } | null;
};
type Props = { sheet: Sheet; answer: (right: boolean) => void; next: () => void; leave: () => void };

/** One look: the question, and once it is answered what was there. */
export function Question({ sheet, answer, next, leave }: Props) {
  const { task, trial, size, answer: answered } = sheet;
  return (
    <section className={styles.practice} aria-label="Question">
      <h2>{task === 'more even' ? 'Which of the two is the more even?' : 'Which gap is off?'}</h2>
      {task === 'more even' ? (
        <TwoSettings sheet={sheet} answer={answer} />
      ) : (
        <PointAtGap
          pack={trial.pack}
          spacing={trial.faulty}
          size={size}
          answered={answered !== null}
          choose={(gap) => answer(gap === trial.gap)}
        />
      )}
      <p role="status" className={styles.said}>
        {answered ? answerWords(sheet, answered.right) : ''}
      </p>
      <p className={styles.row}>
        {answered && (
          <button type="button" className="button button-main" autoFocus onClick={next}>
            Next
          </button>
        )}
        <button type="button" className="button button-text" onClick={leave}>
          Stop
        </button>
        <span className="quiet note-size">{sheet.stair.trials + (answered ? 0 : 1)} of about 40</span>
      </p>
    </section>
  );
}

function TwoSettings({ sheet: { trial, size, answer: answered }, answer }: Pick<Props, 'sheet' | 'answer'>) {
  const line = (spacing: Trial['even']) => (
    <SheetFrame scrolls ground="light">
      <LineDrawing pack={trial.pack} spacing={spacing} size={{ value: size, unit: 'px' }} label={null} />
    </SheetFrame>
  );
  return (
    <>
      {line(trial.evenAbove ? trial.even : trial.faulty)}
      <p>
        <button type="button" className="button" disabled={answered !== null} onClick={() => answer(trial.evenAbove)}>
          The upper one
        </button>
      </p>
      {line(trial.evenAbove ? trial.faulty : trial.even)}
      <p>
        <button type="button" className="button" disabled={answered !== null} onClick={() => answer(!trial.evenAbove)}>
          The lower one
        </button>
      </p>
    </>
  );
}

function answerWords({ task, trial }: Sheet, right: boolean): string {
  const letters = pairLetters(trial.pack, trial.gap);
  const where = task === 'more even' ? ` ${trial.evenAbove ? 'below' : 'above'}` : '';
  return `${right ? 'Yes' : 'No'}: the gap between “${letters.left}” and “${letters.right}”${where} is ${trial.fault > 0 ? 'too wide' : 'too tight'} by ${numberText(Math.abs(trial.fault))} thousandths.`;
}

type PointProps = { pack: Pack; spacing: Spacing; size: number; answered: boolean; choose: (gap: number) => void };

/** A line in which a gap is pointed at: on the line itself, or by its name, with Tab and arrows. Word spaces are not asked for. */
function PointAtGap({ pack, spacing, size, answered, choose }: PointProps) {
  const names = useRef<HTMLDivElement>(null);
  const [near, setNear] = useState<number | null>(null);
  const placed = placeLetters(pack, spacing);
  const gaps = spacing.offsets.map((_, gap) => gap).filter((gap) => !pairLetters(pack, gap).wordSpace);

  const at = (event: MouseEvent<HTMLElement>) => gapUnder(event, placed, gaps);
  function walk(event: KeyboardEvent<HTMLElement>) {
    const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    const buttons = [...(names.current?.querySelectorAll('button') ?? [])];
    const place = buttons.indexOf(event.target as HTMLButtonElement);
    if (step === 0 || place < 0) return;
    event.preventDefault();
    buttons[Math.max(0, Math.min(buttons.length - 1, place + step))]?.focus();
  }
  return (
    <>
      <div
        className={answered ? undefined : styles.pointing}
        onMouseMove={(event) => setNear(answered ? null : at(event))}
        onMouseLeave={() => setNear(null)}
        onClick={(event) => {
          const gap = at(event);
          if (!answered && gap !== null) choose(gap);
        }}
      >
        <SheetFrame scrolls ground="light">
          <LineDrawing
            pack={pack}
            spacing={spacing}
            size={{ value: size, unit: 'px' }}
            label={null}
            behind={near !== null && <Ticks pack={pack} x={placed.gaps[near]!.centre} />}
          />
        </SheetFrame>
      </div>
      <div
        ref={names}
        className={styles.row}
        role="group"
        aria-label="Gaps of the line, in order"
        onKeyDown={walk}
        onBlur={() => setNear(null)}
      >
        {gaps.map((gap) => {
          const { left, right } = pairLetters(pack, gap);
          return (
            <button
              key={gap}
              type="button"
              className="button button-small"
              disabled={answered}
              onFocus={() => setNear(gap)}
              onClick={() => choose(gap)}
            >
              {left}
              {'\u200A'}
              {right}
            </button>
          );
        })}
      </div>
    </>
  );
}

/** Short strokes over and under a gap, clear of the letters. */
function Ticks({ pack, x }: { pack: Pack; x: number }) {
  const em = pack.unitsPerEm;
  const top = Math.max(pack.vertical.ascender, pack.vertical.ascenderTop, pack.vertical.capHeight);
  const foot = Math.max(-pack.vertical.descender, 0.24 * em);
  return <path data-part="ticks" className={styles.tick} d={`M${x} ${-top}v${0.14 * em}M${x} ${foot}v${-0.14 * em}`} />;
}

/** The gap nearest to the pointer, in the drawing's own units; null off the drawing. */
function gapUnder(event: MouseEvent<HTMLElement>, placed: PlacedLine, gaps: number[]): number | null {
  const svg = (event.target as Element).closest('svg');
  if (!svg) return null;
  const { left, width } = svg.getBoundingClientRect();
  const frame = svg.viewBox.baseVal;
  const x = frame.x + ((event.clientX - left) * frame.width) / width;
  const away = (gap: number) => Math.abs(placed.gaps[gap]!.centre - x);
  return gaps.reduce((nearest, gap) => (away(gap) < away(nearest) ? gap : nearest), gaps[0] ?? 0);
}

/** One question: a line with one fault, and the same line even. */
type Trial = {
  readonly pack: Pack;
  readonly even: Spacing;
  readonly faulty: Spacing;
  readonly gap: number;
  /** Above 0 the gap was opened. Whole 1/1000 em. */
  readonly fault: number;
  /** Whether the even one stands above. */
  readonly evenAbove: boolean;
};

/** Draws a line that has a gap of the kind, and makes a fault of the size in it, wider or tighter. */
export function drawTrial(
  packs: readonly Pack[],
  kind: PracticeKind,
  level: number,
  random: () => number,
): Trial | null {
  const possible = packs.filter((pack) => gapsOfKind(pack, kind).length > 0);
  const pack = pick(possible, random);
  const gap = pack && pick(gapsOfKind(pack, kind), random);
  if (!pack || gap === undefined) return null;
  const offsets = evenOffsets(pack);
  const fault = Math.max(1, Math.round(level)) * (random() < 0.5 ? 1 : -1);
  return {
    pack,
    gap,
    fault,
    even: { tracking: 0, offsets },
    faulty: { tracking: 0, offsets: offsets.map((offset, pair) => (pair === gap ? offset + fault : offset)) },
    evenAbove: random() < 0.5,
  };
}

function pick<T>(list: readonly T[], random: () => number): T | undefined {
  return list[Math.floor(random() * list.length)];
}

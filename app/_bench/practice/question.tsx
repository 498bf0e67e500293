import { type KeyboardEvent, type MouseEvent, useRef, useState } from 'react';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import { pairLetters } from '@/shared/editing/pair-words';
import { type PlacedLine, placeLetters } from '@/shared/outline/place-letters';
import type { Question } from '@/shared/practice/moved-gap';
import type { Staircase } from '@/shared/practice/staircase';
import type { Pack } from '@/shared/schemas/pack';
import type { PracticeKind, PracticeTask } from '@/shared/schemas/practice';
import type { Spacing } from '@/shared/schemas/spacing';
import { pairName, perMilleEm } from '@/shared/wording/lengths';
import styles from './practice.module.css';

export type Sheet = {
  task: PracticeTask;
  kind: PracticeKind;
  size: number;
  stair: Staircase;
  /** Number of questions so far in which nothing was moved, and in how many of them the person saw a move. */
  unmoved: { shown: number; seen: number };
  look: Question;
  answer: { right: boolean } | null;
};
type Props = { sheet: Sheet; answer: (right: boolean) => void; next: () => void; leave: () => void };

/** One question and, once it is answered, what we had moved. */
export function Question({ sheet, answer, next, leave }: Props) {
  const { task, look, size, answer: answered, stair, unmoved } = sheet;
  return (
    <section className={styles.practice} aria-label="Question">
      <h2>{task === 'which line' ? 'In which line was a gap moved?' : 'Which gap was moved?'}</h2>
      {task === 'which line' ? (
        <TwoLines sheet={sheet} answer={answer} />
      ) : (
        <PointAtGap
          pack={look.pack}
          spacing={look.moved}
          size={size}
          answered={answered !== null}
          moved={look.gap}
          choose={(gap) => answer(gap === look.gap)}
        />
      )}
      <p role="status" className={styles.message}>
        {answered ? answerWords(sheet, answered.right) : ''}
      </p>
      {answered && task === 'which gap' && look.gap !== null && (
        <figure className={styles.figure}>
          <figcaption className="quiet note-size">The same line, untouched</figcaption>
          <Line look={look} spacing={look.unmoved} size={size} marked />
        </figure>
      )}
      <p className={styles.row}>
        {answered && (
          <button type="button" className="button button-main" autoFocus onClick={next}>
            Next
          </button>
        )}
        <button type="button" className="button button-text" onClick={leave}>
          Stop
        </button>
        <span className="quiet note-size">{stair.trials + unmoved.shown + (answered ? 0 : 1)} of about 50</span>
      </p>
    </section>
  );
}

function TwoLines({ sheet: { look, size, answer: answered }, answer }: Pick<Props, 'sheet' | 'answer'>) {
  const line = (above: boolean) => (
    <Line
      look={look}
      spacing={above === look.movedAbove ? look.moved : look.unmoved}
      size={size}
      marked={answered !== null}
    />
  );
  const button = (words: string, right: boolean) => (
    <button type="button" className="button" disabled={answered !== null} onClick={() => answer(right)}>
      {words}
    </button>
  );
  return (
    <>
      {line(true)}
      {line(false)}
      <p className={styles.row}>
        {button('The upper one', look.gap !== null && look.movedAbove)}
        {button('The lower one', look.gap !== null && !look.movedAbove)}
        {button('Neither', look.gap === null)}
      </p>
    </>
  );
}

type LineProps = { look: Question; spacing: Spacing; size: number; marked: boolean };

/** A line of a question; `marked`, with strokes at the gap it is about. */
function Line({ look: { pack, gap }, spacing, size, marked }: LineProps) {
  return (
    <SheetFrame scrolls ground="light">
      <LineDrawing
        pack={pack}
        spacing={spacing}
        size={{ value: size, unit: 'px' }}
        label={null}
        behind={marked && gap !== null && <Ticks pack={pack} x={placeLetters(pack, spacing).gaps[gap]!.centre} />}
      />
    </SheetFrame>
  );
}

/** The answer is judged by what we moved, never by what the face's designer did. */
function answerWords({ task, look }: Sheet, right: boolean): string {
  const begin = right ? 'Yes' : 'No';
  if (look.gap === null)
    return `${begin}: nothing was moved. ${task === 'which line' ? 'Both lines are' : 'The line is'} untouched.`;
  const { left, right: other } = pairLetters(look.pack, look.gap);
  const where = task === 'which line' ? ` in the ${look.movedAbove ? 'upper' : 'lower'} line` : '';
  return `${begin}: we ${look.by > 0 ? 'opened' : 'closed'} ${pairName([left, other])}${where} by ${perMilleEm(look.by)}.`;
}

type PointProps = {
  pack: Pack;
  spacing: Spacing;
  size: number;
  answered: boolean;
  /** The gap that was moved, marked after the answer; null when none was. */
  moved: number | null;
  /** Null: no gap was moved. */
  choose: (gap: number | null) => void;
};

/**
 * A line in which the person points at a gap: on the line itself, or by its name with Tab and arrows. Word spaces are
 * left out.
 */
function PointAtGap({ pack, spacing, size, answered, moved, choose }: PointProps) {
  const names = useRef<HTMLDivElement>(null);
  const [near, setNear] = useState<number | null>(null);
  const placed = placeLetters(pack, spacing);
  const marked = answered ? moved : near;
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
            behind={marked !== null && <Ticks pack={pack} x={placed.gaps[marked]!.centre} />}
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
        <button type="button" className="button button-small" disabled={answered} onClick={() => choose(null)}>
          None of them
        </button>
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

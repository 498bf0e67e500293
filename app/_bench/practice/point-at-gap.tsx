import { useRef, useState, type KeyboardEvent, type MouseEvent } from 'react';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import { pairLetters } from '@/shared/editing/pair-words';
import { placeLetters, type PlacedLine } from '@/shared/outline/place-letters';
import type { Pack } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';
import styles from './practice.module.css';

type Props = { pack: Pack; spacing: Spacing; size: number; answered: boolean; choose: (gap: number) => void };

/** A line in which a gap is pointed at: on the line itself, or by its name, with Tab and arrows. Word spaces are not asked for. */
export function PointAtGap({ pack, spacing, size, answered, choose }: Props) {
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

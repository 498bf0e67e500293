'use client';
import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from 'react';
import { heldGap, nearestGap } from '@/app/_line/frame';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { Button } from '@/app/_ui/Button';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import { gapName } from '@/shared/editing/pair-words';
import { placeLetters } from '@/shared/outline/place-letters';
import type { Pack } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';
import { signed } from '@/shared/text/number';

type Props = { pack: Pack; start: Spacing; byEye: Spacing };

/** How far a gap may be moved here, and how near to it one must press, 1/1000 em. */
const REACH = 250;
const NEAR = 60;

/** By how much the keys change a gap; the same as on the bench. */
const steps: Record<string, number> = {
  ArrowRight: 5,
  ArrowLeft: -5,
  ArrowUp: 1,
  ArrowDown: -1,
  PageUp: 20,
  PageDown: -20,
};

/**
 * A line that anyone can space at once, by drag and by the keys of the bench. Nothing is kept. The white is shown when
 * asked for, and once a gap was changed the line can be compared with the same line set by eye.
 */
export function FirstLine({ pack, start, byEye }: Props) {
  const [offsets, setOffsets] = useState(start.offsets);
  const [gap, setGap] = useState(0);
  const [white, setWhite] = useState(false);
  const [compared, setCompared] = useState(false);
  const spacing = { tracking: 0, offsets };
  const touched = offsets.some((offset, index) => offset !== start.offsets[index]);
  const dragged = useRef<{ x: number; offset: number; gap: number } | null>(null);
  const root = useRef<HTMLElement>(null);
  const last = offsets.length - 1;
  const change = (at: number, to: number) =>
    setOffsets((all) =>
      all.map((one, index) =>
        index === at ? Math.max(start.offsets[at]! - REACH, Math.min(start.offsets[at]! + REACH, to)) : one,
      ),
    );

  function press({ key, shiftKey, ctrlKey, metaKey, altKey, preventDefault }: Pressed): void {
    if (ctrlKey || metaKey || altKey || shiftKey) return;
    if (key === 'j') setGap(Math.min(last, gap + 1));
    else if (key === 'f') setGap(Math.max(0, gap - 1));
    else if (key === 'w') setWhite(!white);
    else if (steps[key] !== undefined) change(gap, offsets[gap]! + steps[key]);
    else return;
    preventDefault();
  }

  // Keys work from the first moment: where nothing has the focus they belong to the line.
  const pressed = useRef(press);
  useEffect(() => {
    pressed.current = press;
  });
  useEffect(() => {
    const anywhere = (event: globalThis.KeyboardEvent) => {
      const scrolls = ['PageUp', 'PageDown', 'ArrowUp', 'ArrowDown'].includes(event.key);
      // A press on the page gives the focus to its main part.
      const nowhere = event.target instanceof Element && event.target.matches('body, #main');
      if (nowhere && !scrolls) pressed.current(asPressed(event));
    };
    document.addEventListener('keydown', anywhere);
    root.current?.setAttribute('data-ready', '');
    return () => document.removeEventListener('keydown', anywhere);
  }, []);

  /** From a place on the screen to the line, in font units. */
  function unitsUnder(event: PointerEvent<HTMLElement>): { at: number; perPixel: number } | null {
    const svg = event.currentTarget.querySelector('svg');
    if (!svg) return null;
    const [box, view] = [svg.getBoundingClientRect(), svg.viewBox.baseVal];
    const perPixel = view.width / box.width;
    return { at: view.x + (event.clientX - box.left) * perPixel, perPixel };
  }

  function down(event: PointerEvent<HTMLElement>): void {
    const under = unitsUnder(event);
    if (!under || event.button !== 0) return;
    const placed = placeLetters(pack, spacing);
    const held = heldGap(placed, under.at, (NEAR * pack.unitsPerEm) / 1000) ?? nearestGap(placed, under.at);
    setGap(held);
    dragged.current = { x: event.clientX, offset: offsets[held]!, gap: held };
    event.currentTarget.setPointerCapture(event.pointerId);
  }

  function move(event: PointerEvent<HTMLElement>): void {
    const under = unitsUnder(event);
    if (!dragged.current || !under) return;
    const { x, offset, gap: held } = dragged.current;
    change(held, Math.round(offset + ((event.clientX - x) * under.perPixel * 1000) / pack.unitsPerEm));
  }

  const letGo = () => void (dragged.current = null);
  const room = placeLetters(pack, start).width * 1.05;
  return (
    <section ref={root} className="first-line" aria-label="A line to space">
      <SheetFrame ground="light">
        <div
          className="first-line-sheet"
          onPointerDown={down}
          onPointerMove={move}
          onPointerUp={letGo}
          onPointerCancel={letGo}
        >
          <LineDrawing
            pack={pack}
            spacing={spacing}
            room={room}
            looks={{ white }}
            behind={<Chosen pack={pack} spacing={spacing} gap={gap} />}
          />
        </div>
        {compared && (
          <>
            <LineDrawing pack={pack} spacing={byEye} room={room} looks={{ white }} label={`${pack.text}, set by eye`} />
            <p className="sheet-label">Set by eye. Yours may differ and be as good.</p>
          </>
        )}
      </SheetFrame>
      <div className="first-line-controls">
        <label>
          <span>
            {pack.text[gap]} {pack.text[gap + 1]}
          </span>
          <input
            type="range"
            min={-REACH}
            max={REACH}
            value={offsets[gap]! - start.offsets[gap]!}
            aria-label={gapName(pack, gap)}
            aria-valuetext={`moved ${signed(offsets[gap]! - start.offsets[gap]!)}`}
            onChange={(event) => change(gap, start.offsets[gap]! + Number(event.currentTarget.value))}
            onKeyDown={(event: KeyboardEvent) => press(asPressed(event))}
          />
          <span className="figure-text" aria-hidden="true">
            {signed(offsets[gap]! - start.offsets[gap]!)}
          </span>
        </label>
        <Button small disabled={gap === 0} onClick={() => setGap(gap - 1)} aria-keyshortcuts="f">
          Previous gap
        </Button>
        <Button small disabled={gap === last} onClick={() => setGap(gap + 1)} aria-keyshortcuts="j">
          Next gap
        </Button>
        <Button small aria-pressed={white} onClick={() => setWhite(!white)} aria-keyshortcuts="w">
          Show the white
        </Button>
        <Button small disabled={!touched} aria-pressed={compared} onClick={() => setCompared(!compared)}>
          Compare with the line set by eye
        </Button>
        <Button small kind="text" disabled={!touched} onClick={() => setOffsets(start.offsets)}>
          Start again
        </Button>
      </div>
      <p className="quiet note-size">
        Drag a letter, or press <kbd>←</kbd> <kbd>→</kbd> to change a gap and <kbd>f</kbd> <kbd>j</kbd> to choose one.
        Nothing is stored.
      </p>
    </section>
  );
}

type Pressed = Pick<KeyboardEvent, 'key' | 'shiftKey' | 'ctrlKey' | 'metaKey' | 'altKey'> & {
  preventDefault: () => void;
};

const asPressed = (event: KeyboardEvent | globalThis.KeyboardEvent): Pressed => ({
  key: event.key,
  shiftKey: event.shiftKey,
  ctrlKey: event.ctrlKey,
  metaKey: event.metaKey,
  altKey: event.altKey,
  preventDefault: () => event.preventDefault(),
});

/** A tick over and one under the chosen gap, clear of the letters. */
function Chosen({ pack, spacing, gap }: { pack: Pack; spacing: Spacing; gap: number }) {
  const { gaps } = placeLetters(pack, spacing);
  const em = pack.unitsPerEm;
  const x = gaps[gap]?.centre ?? 0;
  const top = -pack.vertical.capHeight - 0.06 * em;
  return <path className="first-line-chosen" d={`M${x} ${top}v${-0.09 * em}M${x} ${0.06 * em}v${0.09 * em}`} />;
}

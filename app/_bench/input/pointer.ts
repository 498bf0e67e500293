import { heldGap, nearestGap, unitsAt } from '@/app/_line/frame';
import type { Drawn } from '../drawing/line-canvas';
import { chosenRun } from '../session/state';
import type { BenchSession } from '../session/session';

type Place = { x: number; y: number };

/** A press that moves less than this is a click. CSS px. */
const STILL = 3;
/** With Shift, the letters move this many times slower than the pointer. */
const SLOW = 0.2;
/** A gap can be grabbed this far from its middle, CSS px. */
const REACH = 14;
const ZOOM = { least: 0.4, most: 5 };

/**
 * Pointer, pen and touch on the working view: pointing chooses, dragging moves everything right of the gap,
 * two fingers zoom. Returns a function that removes the listeners.
 */
export function attachPointer(
  view: HTMLElement,
  session: BenchSession,
  drawn: () => Drawn | null,
  onChosen: (pair: number) => void,
): () => void {
  const down = new Map<number, Place>();
  let drag: { moved: boolean; gap: number | null; last: number; carried: number } | null = null;
  let pinch: { distance: number; zoom: number } | null = null;

  const placeOf = (event: PointerEvent): Place => {
    const box = view.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };

  const start = (event: PointerEvent) => {
    const now = drawn();
    if (!now || event.button !== 0) return;
    const place = placeOf(event);
    down.set(event.pointerId, place);
    if (down.size === 2) return startPinch();
    if (down.size > 2) return;
    view.setPointerCapture(event.pointerId);
    const at = unitsAt(now.frame, place.x);
    const held = heldGap(now.placed, at, REACH / now.frame.scale);
    const pair = held ?? nearestGap(now.placed, at);
    const run = chosenRun(session.store.get());
    const within = run.first !== run.last && pair >= run.first && pair <= run.last;
    if (event.shiftKey || !within) session.choose(pair, event.shiftKey, true);
    onChosen(pair);
    drag = { moved: false, gap: held, last: place.x, carried: 0 };
    event.preventDefault();
  };

  const move = (event: PointerEvent) => {
    const now = drawn();
    if (!now || !down.has(event.pointerId)) return;
    const place = placeOf(event);
    if (pinch) {
      down.set(event.pointerId, place);
      return spread();
    }
    const from = down.get(event.pointerId);
    if (!drag || !from || drag.gap === null) return;
    if (!drag.moved && Math.abs(place.x - from.x) < STILL) return;
    drag.moved = true;
    const direction = now.frame.flipX ? -1 : 1;
    drag.carried += ((place.x - drag.last) * direction * 1000 * (event.shiftKey ? SLOW : 1)) / now.em;
    drag.last = place.x;
    session.follow({ kind: 'nudge', run: chosenRun(session.store.get()), by: drag.carried }, 'start');
  };

  const end = (event: PointerEvent) => {
    if (!down.delete(event.pointerId)) return;
    if (pinch) {
      if (down.size === 0) pinch = null;
      return;
    }
    if (event.type === 'pointercancel') session.cancelGesture();
    else if (drag?.moved) session.endGesture();
    else if (drag && !event.shiftKey) session.choose(session.store.get().chosen.head);
    drag = null;
  };

  function startPinch(): void {
    // A second finger means that the gesture is a zoom.
    session.cancelGesture();
    drag = null;
    pinch = { distance: distance(), zoom: session.store.get().zoom };
  }

  function spread(): void {
    if (!pinch || pinch.distance < 1 || down.size < 2) return;
    setZoom(session, (pinch.zoom * distance()) / pinch.distance);
  }

  function distance(): number {
    const [a, b] = [...down.values()];
    return a && b ? Math.hypot(a.x - b.x, a.y - b.y) : 0;
  }

  const wheel = (event: WheelEvent) => {
    if (!event.ctrlKey) return;
    event.preventDefault();
    setZoom(session, session.store.get().zoom * (1 - Math.max(-50, Math.min(50, event.deltaY)) / 200));
  };

  view.addEventListener('pointerdown', start);
  view.addEventListener('pointermove', move);
  view.addEventListener('pointerup', end);
  view.addEventListener('pointercancel', end);
  view.addEventListener('wheel', wheel, { passive: false });
  return () => {
    view.removeEventListener('pointerdown', start);
    view.removeEventListener('pointermove', move);
    view.removeEventListener('pointerup', end);
    view.removeEventListener('pointercancel', end);
    view.removeEventListener('wheel', wheel);
  };
}

export function setZoom(session: BenchSession, zoom: number): void {
  session.store.set({ atTrue: false, zoom: Math.max(ZOOM.least, Math.min(ZOOM.most, zoom)) });
}

/**
 * Undo and redo over any value. Pure: every function gives a new history.
 * While a gesture is open (a drag, a key held down) the value follows the pointer, but no step is made
 * until it ends; a gesture that is cancelled, or ends where it began, leaves no trace.
 */
export type History<T> = {
  readonly steps: readonly T[];
  /** Index of the step that is shown. */
  readonly cursor: number;
  /** The value during a gesture; null when none is open. */
  readonly gesture: { readonly value: T } | null;
};

export function startHistory<T>(value: T): History<T> {
  return { steps: [value], cursor: 0, gesture: null };
}

/** The current value, an open gesture included. */
export function present<T>(history: History<T>): T {
  return history.gesture ? history.gesture.value : settled(history);
}

/** The current value without the open gesture. */
export function settled<T>(history: History<T>): T {
  return history.steps[history.cursor] as T;
}

/** Takes a value of a gesture; opens one if none is open. */
export function follow<T>(history: History<T>, value: T): History<T> {
  return { ...history, gesture: { value } };
}

/** Ends the gesture as one step. */
export function endGesture<T>(history: History<T>, same: (a: T, b: T) => boolean): History<T> {
  if (!history.gesture) return history;
  return record({ ...history, gesture: null }, history.gesture.value, same);
}

export function cancelGesture<T>(history: History<T>): History<T> {
  return history.gesture ? { ...history, gesture: null } : history;
}

/** One step at once. What had been undone can no longer be redone. A gesture still open is ended first. */
export function record<T>(history: History<T>, value: T, same: (a: T, b: T) => boolean): History<T> {
  const closed = endGesture(history, same);
  if (same(settled(closed), value)) return closed;
  const steps = [...closed.steps.slice(0, closed.cursor + 1), value];
  return { steps, cursor: steps.length - 1, gesture: null };
}

/** One step back; an open gesture is cancelled and counts as that step. */
export function undo<T>(history: History<T>): History<T> {
  if (history.gesture) return cancelGesture(history);
  return history.cursor > 0 ? { ...history, cursor: history.cursor - 1 } : history;
}

export function redo<T>(history: History<T>): History<T> {
  if (history.gesture) return history;
  return history.cursor < history.steps.length - 1 ? { ...history, cursor: history.cursor + 1 } : history;
}

export const canUndo = (history: History<unknown>): boolean => history.gesture !== null || history.cursor > 0;
export const canRedo = (history: History<unknown>): boolean =>
  history.gesture === null && history.cursor < history.steps.length - 1;

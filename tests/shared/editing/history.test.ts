import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  cancelGesture,
  canRedo,
  canUndo,
  endGesture,
  follow,
  present,
  record,
  redo,
  startHistory,
  undo,
  type History,
} from '@/shared/editing/history';

const same = (a: number, b: number) => a === b;

describe('history of a toy value', () => {
  it('makes one step of a gesture, however many moves it had', () => {
    let history = startHistory(0);
    for (const moved of [1, 2, 3, 4]) history = follow(history, moved);
    history = endGesture(history, same);
    expect(present(history)).toBe(4);
    expect(present(undo(history))).toBe(0);
  });
  it('leaves no trace of a cancelled gesture, nor of one that ends where it began', () => {
    const before = record(startHistory(0), 5, same);
    expect(cancelGesture(follow(before, 9))).toEqual(before);
    expect(endGesture(follow(follow(before, 9), 5), same)).toEqual(before);
  });
  it('keeps what can be redone when a gesture is cancelled', () => {
    const before = undo(record(startHistory(0), 5, same));
    expect(canRedo(cancelGesture(follow(before, 9)))).toBe(true);
  });
  it('drops what was undone when the hand goes another way', () => {
    const history = record(undo(record(startHistory(0), 5, same)), 7, same);
    expect(canRedo(history)).toBe(false);
    expect(history.steps).toEqual([0, 7]);
  });
  it('takes an open gesture as the step that undo takes back', () => {
    const history = undo(follow(record(startHistory(0), 5, same), 9));
    expect(present(history)).toBe(5);
  });
});

describe('any sitting', () => {
  const act = fc.oneof(
    fc.record({ kind: fc.constant('record' as const), value: fc.integer() }),
    fc.record({ kind: fc.constant('follow' as const), value: fc.integer() }),
    fc.constant({ kind: 'end' as const }),
    fc.constant({ kind: 'cancel' as const }),
    fc.constant({ kind: 'undo' as const }),
    fc.constant({ kind: 'redo' as const }),
  );
  const play = (history: History<number>, next: { kind: string; value?: number }): History<number> => {
    if (next.kind === 'record') return record(history, next.value ?? 0, same);
    if (next.kind === 'follow') return follow(history, next.value ?? 0);
    if (next.kind === 'end') return endGesture(history, same);
    if (next.kind === 'cancel') return cancelGesture(history);
    return next.kind === 'undo' ? undo(history) : redo(history);
  };

  it('can be taken back to its beginning and forward again, and survives being written down', () => {
    fc.assert(
      fc.property(fc.array(act, { maxLength: 60 }), (acts) => {
        let history = endGesture(acts.reduce(play, startHistory(0)), same);
        expect(JSON.parse(JSON.stringify(history))).toEqual(history);
        const last = present(history);
        const depth = history.cursor;
        while (canUndo(history)) history = undo(history);
        expect(present(history)).toBe(0);
        for (let step = 0; step < depth; step += 1) history = redo(history);
        expect(present(history)).toBe(last);
      }),
    );
  });
});

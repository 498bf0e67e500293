import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { endGesture, follow, record, redo, settled, startHistory, undo, type History } from '@/shared/editing/history';
import {
  addRemark,
  followBench,
  recordedSteps,
  resumeRecording,
  startRecording,
  withReason,
  type How,
  type Recording,
} from '@/shared/demonstration/recording';
import { misfitOf, spacingsOf } from '@/shared/demonstration/steps';
import type { Spacing } from '@/shared/schemas/spacing';

const line = (...offsets: number[]): Spacing => ({ tracking: 0, offsets });
const same = (a: Spacing, b: Spacing) => JSON.stringify(a) === JSON.stringify(b);

describe('a recording', () => {
  it('has one step for a gesture, with the pairs that moved and by how much', () => {
    let recording = startRecording('one', line(0, 0, 0));
    recording = followBench(recording, line(0, -12, 0), 'made');
    recording = followBench(recording, { tracking: 5, offsets: [4, -16, 0] }, 'made');
    expect(recording.steps).toEqual([
      { tracking: 0, moves: [[1, -12]], run: [1, 1], reason: '' },
      {
        tracking: 5,
        moves: [
          [0, 4],
          [1, -4],
        ],
        run: [0, 1],
        reason: '',
      },
    ]);
  });

  it('gives an undone step back with its reason when it is redone', () => {
    let recording = followBench(startRecording('one', line(0, 0)), line(0, -12), 'made');
    recording = withReason(recording, 0, 'The V leans away.');
    recording = followBench(recording, line(0, 0), 'undone');
    expect(recording.steps).toEqual([]);
    recording = followBench(recording, line(0, -12), 'redone');
    expect(recording.steps).toEqual([{ tracking: 0, moves: [[1, -12]], run: [1, 1], reason: 'The V leans away.' }]);
  });

  it('takes what was done in a pause as one step when it goes on', () => {
    let recording: Recording = { ...startRecording('one', line(0, 0)), state: 'paused' };
    recording = followBench(followBench(recording, line(5, 0), 'made'), line(5, 7), 'made');
    expect(recording.steps).toEqual([]);
    expect(resumeRecording(recording, line(5, 7)).steps).toEqual([
      {
        tracking: 0,
        moves: [
          [0, 5],
          [1, 7],
        ],
        run: [0, 1],
        reason: '',
      },
    ]);
  });

  it('keeps a word about a gap that is left alone', () => {
    const recording = addRemark(startRecording('one', line(0, 0)), [1, 1], 'This one is right.');
    expect(spacingsOf(recordedSteps(recording))).toEqual([line(0, 0), line(0, 0)]);
  });

  it('stops taking steps at the limit and says so by pausing', () => {
    let recording = startRecording('one', line(0));
    for (let step = 1; step <= 320; step += 1) recording = followBench(recording, line(step), 'made');
    expect([recording.steps.length, recording.state]).toEqual([300, 'paused']);
  });

  it('whatever is set, undone and redone, ends with the spacing of the bench', () => {
    const act = fc.oneof(
      fc.constant('undo' as const),
      fc.constant('redo' as const),
      fc.array(fc.integer({ min: -90, max: 90 }), { minLength: 3, maxLength: 3 }),
    );
    fc.assert(
      fc.property(fc.array(act, { maxLength: 40 }), (acts) => {
        let history: History<Spacing> = startHistory(line(0, 0, 0));
        let recording = startRecording('one', settled(history));
        for (const one of acts) {
          const how: How = one === 'undo' ? 'undone' : one === 'redo' ? 'redone' : 'made';
          history =
            one === 'undo'
              ? undo(history)
              : one === 'redo'
                ? redo(history)
                : record(endGesture(follow(history, line(...one)), same), line(...one), same);
          recording = followBench(recording, settled(history), how);
        }
        const spacings = spacingsOf(recordedSteps(recording));
        expect(spacings[spacings.length - 1]).toEqual(settled(history));
        // Undo leaves no trace, so the recording is as long as the history.
        expect(recording.steps.length).toBe(history.cursor);
      }),
    );
  });
});

describe('what does not fit a line', () => {
  const move = (pair: number, by: number) => ({
    tracking: 0,
    moves: [[pair, by] as [number, number]],
    run: null,
    reason: '',
  });
  it('is said with the number that is wrong', () => {
    expect(misfitOf({ start: line(0, 0), steps: [move(0, 1)] }, 3)).toContain(
      'has 3 gaps, and the demonstration begins with 2',
    );
    expect(misfitOf({ start: line(0, 0), steps: [move(2, 1)] }, 2)).toContain('no gap 3 in a line of 2');
    expect(misfitOf({ start: line(0, 0), steps: [move(0, 1500), move(0, 600)] }, 2)).toContain('leads to 2100');
    expect(misfitOf({ start: line(0, 0), steps: [move(1, -12)] }, 2)).toBeNull();
  });
});

import * as z from 'zod/mini';
import {
  demonstrationStepSchema,
  STEP_LIMIT,
  type DemonstrationStep,
  type DemonstrationSteps,
} from '@/shared/schemas/demonstration';
import { spacingSchema, type Spacing } from '@/shared/schemas/spacing';
import { applyStep, changedRun, stepBetween } from './steps';

/** A demonstration while it is made. The form it has in the journal on the device. */
export const recordingSchema = z.strictObject({
  /** Names it for the server, whenever it is sent. */
  id: z.string(),
  state: z.enum(['running', 'paused', 'ended']),
  title: z.string(),
  start: spacingSchema,
  steps: z.array(demonstrationStepSchema),
  /** Undone steps, the last one first to be redone. */
  undone: z.array(demonstrationStepSchema),
});
export type Recording = z.infer<typeof recordingSchema>;

/** How the bench got to its present spacing. */
export type How = 'made' | 'undone' | 'redone';

export function startRecording(id: string, spacing: Spacing): Recording {
  return { id, state: 'running', title: '', start: spacing, steps: [], undone: [] };
}

/**
 * Follows the bench to `now`: one gesture, one step; undo takes the last step back out, with its reason, and redo puts
 * it in again. What is done while it pauses is no step of its own. The same recording when there is nothing to follow.
 */
export function followBench(recording: Recording, now: Spacing, how: How): Recording {
  if (recording.state !== 'running') return recording;
  const last = spacingAt(recording, recording.steps.length);
  if (same(last, now)) return recording;
  const taken = recording.steps[recording.steps.length - 1];
  if (how === 'undone' && taken && same(spacingAt(recording, recording.steps.length - 1), now)) {
    return { ...recording, steps: recording.steps.slice(0, -1), undone: [...recording.undone, taken] };
  }
  const back = recording.undone[recording.undone.length - 1];
  if (how === 'redone' && back && same(applyStep(last, back), now)) {
    return { ...recording, steps: [...recording.steps, back], undone: recording.undone.slice(0, -1) };
  }
  return add(recording, stepBetween(last, now, changedRun(last, now)));
}

/** A word about pairs that are left as they are. */
export function addRemark(recording: Recording, run: [number, number], reason: string): Recording {
  return add(recording, { tracking: 0, moves: [], run, reason });
}

export function withReason(recording: Recording, index: number, reason: string): Recording {
  return { ...recording, steps: recording.steps.map((step, place) => (place === index ? { ...step, reason } : step)) };
}

/** Goes on after a pause; what was done in between becomes one step, so that the line does not jump. */
export function resumeRecording(recording: Recording, now: Spacing): Recording {
  return followBench({ ...recording, state: 'running' }, now, 'made');
}

/** The recording as it is stored. */
export const recordedSteps = ({ start, steps }: Recording): DemonstrationSteps => ({ start, steps });

export const isFull = ({ steps }: Recording): boolean => steps.length >= STEP_LIMIT;

/** The spacing after `count` steps. */
function spacingAt({ start, steps }: Recording, count: number): Spacing {
  return steps.slice(0, count).reduce(applyStep, start);
}

function add(recording: Recording, step: DemonstrationStep): Recording {
  if (isFull(recording)) return { ...recording, state: 'paused' };
  return { ...recording, steps: [...recording.steps, step], undone: [] };
}

const same = (a: Spacing, b: Spacing): boolean =>
  a.tracking === b.tracking && a.offsets.every((offset, pair) => offset === b.offsets[pair]);

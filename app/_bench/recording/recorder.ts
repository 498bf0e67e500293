import * as z from 'zod/mini';
import {
  addRemark,
  followBench,
  type How,
  recordedSteps,
  type Recording,
  recordingSchema,
  resumeRecording,
  startRecording,
  withReason,
} from '@/shared/demonstration/recording';
import { misfitOf } from '@/shared/demonstration/steps';
import { type SpacingDocument, spacingOf } from '@/shared/editing/document';
import { type History, settled } from '@/shared/editing/history';
import type { DemonstrationSteps } from '@/shared/schemas/demonstration';
import type { BenchProps } from '../props';
import { newKey, openDevice } from '../session/device';
import type { BenchSession } from '../session/session';
import { chosenRun } from '../session/state';
import { createStore, type Store } from '../session/store';

type RecorderState = {
  /** The recording in progress, or finished and not on the server yet. */
  readonly recording: Recording | null;
  /** The step whose reason is being typed; null = the last one. */
  readonly sending: boolean;
  readonly trouble: Exclude<SendAnswer, 'saved'> | null;
  /** Id of the last recording that the server accepted. */
  readonly stored: string | null;
  readonly deviceStores: boolean;
};

export type Recorder = {
  readonly store: Store<RecorderState>;
  begin(): void;
  pause(): void;
  resume(): void;
  /** No more steps; it needs only its title. */
  end(): void;
  /** Discards the recording. */
  discard(): void;
  setTitle(title: string): void;
  setReason(index: number, reason: string): void;
  /** A remark on the chosen gap, without a change to it. */
  remark(): void;
  send(): Promise<void>;
  /** Follows the bench; returns a function that stops it. */
  attach(): () => void;
};

/**
 * Records what happens on the bench from its own history. Every step is in the journal on this device before anything
 * else happens, so that a reload resumes where it was; the server gets the whole recording once it has a title.
 */
export function openRecorder(
  session: BenchSession,
  { save, specimenVersionId }: NonNullable<BenchProps['demonstrations']>,
): Recorder {
  const { store: device } = openDevice();
  const { personKey, pack } = session.props;
  const place = `kerncrit/${encodeURIComponent(personKey)}/recording/${encodeURIComponent(specimenVersionId)}`;
  const pairs = pack.letters.length - 1;
  const store = createStore<RecorderState>({
    recording: read(device.get(place), pairs),
    sending: false,
    trouble: null,
    stored: null,
    deviceStores: true,
  });
  const spacing = () => spacingOf(settled(session.store.get().history));

  function setRecording(recording: Recording | null): void {
    if (recording === store.get().recording) return;
    let deviceStores = true;
    try {
      if (recording) device.set(place, JSON.stringify(recording));
      else device.remove(place);
    } catch {
      deviceStores = false;
    }
    store.set({ recording, deviceStores, ...(recording && { stored: null }) });
  }
  const change = (how: (recording: Recording) => Recording) => {
    const { recording } = store.get();
    if (recording) setRecording(how(recording));
  };

  return {
    store,
    begin: () => setRecording(startRecording(newKey(), spacing())),
    pause: () => change((recording) => ({ ...recording, state: 'paused' })),
    resume: () => change((recording) => resumeRecording(recording, spacing())),
    end: () => change((recording) => ({ ...recording, state: 'ended' })),
    discard: () => setRecording(null),
    setTitle: (title) => change((recording) => ({ ...recording, title })),
    setReason: (index, reason) => change((recording) => withReason(recording, index, reason)),
    remark() {
      const { first, last } = chosenRun(session.store.get());
      change((recording) => addRemark(recording, [first, last], ''));
    },
    async send() {
      const { recording, sending } = store.get();
      if (!recording || sending) return;
      store.set({ sending: true, trouble: null });
      const answer = await sendRecording(`${save}/${recording.id}`, {
        specimenVersionId,
        title: recording.title,
        recorded: recordedSteps(recording),
      });
      if (answer === 'saved') setRecording(null);
      store.set({ sending: false, ...(answer === 'saved' ? { stored: recording.id } : { trouble: answer }) });
    },
    attach() {
      let before = session.store.get().history;
      const follow = () => {
        const { history } = session.store.get();
        if (history === before || history.gesture) return;
        const how = howFrom(before, history);
        before = history;
        change((recording) => followBench(recording, spacingOf(settled(history)), how));
      };
      // Another window of the same person may have continued it.
      const heard = (event: StorageEvent) => {
        if (event.key === place) store.set({ recording: read(event.newValue, pairs) });
      };
      const unsubscribe = session.store.subscribe(follow);
      window.addEventListener('storage', heard);
      return () => {
        unsubscribe();
        window.removeEventListener('storage', heard);
      };
    },
  };
}

/** Whether undo, redo or a new step led from one history to the next. */
function howFrom(before: History<SpacingDocument>, after: History<SpacingDocument>): How {
  if (before.steps !== after.steps) return 'made';
  return after.cursor < before.cursor ? 'undone' : 'redone';
}

function read(text: string | null, pairs: number): Recording | null {
  try {
    const recording = z.parse(z.nullable(recordingSchema), JSON.parse(text ?? 'null'));
    return recording && misfitOf(recordedSteps(recording), pairs) === null ? recording : null;
  } catch {
    return null;
  }
}

type SendAnswer = 'saved' | 'unreachable' | 'signed out' | { refused: string };

/** Sends a recording; sent again to its own address it is the same one. */
async function sendRecording(
  address: string,
  body: { specimenVersionId: string; title: string; recorded: DemonstrationSteps },
): Promise<SendAnswer> {
  try {
    const answer = await fetch(address, {
      method: 'PUT',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    if (answer.ok) return 'saved';
    if (answer.status === 401) return 'signed out';
    if (answer.status >= 500) return 'unreachable';
    const answered = (await answer.json()) as { error?: { message?: unknown } };
    return { refused: typeof answered.error?.message === 'string' ? answered.error.message : 'The server refused it.' };
  } catch {
    return 'unreachable';
  }
}

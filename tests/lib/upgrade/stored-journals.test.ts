import { beforeAll, describe, expect, it } from 'vitest';
import { readWaiting } from '@/app/_bench/practice/results';
import { readScreen } from '@/app/_bench/session/screen';
import { waitingNotes } from '@/app/critique/_desk/notes';
import { readRun } from '@/shared/critique/remark-run';
import { recordedSteps, recordingSchema } from '@/shared/demonstration/recording';
import { misfitOf } from '@/shared/demonstration/steps';
import { present, undo } from '@/shared/editing/history';
import type { SpacingDocument } from '@/shared/editing/document';
import { openJournal, type DeviceStore, type JournalScope } from '@/shared/editing/journal';
import { isSaved, nextToSend, type ServerState } from '@/shared/editing/sync';
import { writeNoteSchema } from '@/shared/schemas/note';
import { journals, storedForms } from '@/tests/fixtures/stored/stored';

/** One journal: what the server had when the device last heard of it and at the end, and the state of the bench. */
type KeptDraft = {
  kind: string;
  scope: JournalScope;
  server: ServerState;
  after: ServerState;
  standing: SpacingDocument;
  steps: number;
  saved: boolean;
};

/** A browser's local storage that holds what an earlier version left there. */
function storageWith(entries: Record<string, string>) {
  const kept = new Map(Object.entries(entries));
  const storage = {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
    key: (index: number) => [...kept.keys()][index] ?? null,
    get length() {
      return kept.size;
    },
  };
  const store: DeviceStore = {
    get: storage.getItem,
    set: storage.setItem,
    remove: storage.removeItem,
    keys: () => [...kept.keys()],
  };
  return { kept, storage, store };
}

for (const form of storedForms) {
  describe(`what version ${form} left on a device`, () => {
    const { about, entries } = journals(form);
    const { kept, storage, store } = storageWith(entries);
    beforeAll(() => {
      Object.assign(globalThis, { window: Object.assign(new EventTarget(), { localStorage: storage }) });
      return () => Reflect.deleteProperty(globalThis, 'window');
    });

    it.each(about.drafts as KeptDraft[])('opens the journal of a draft: $kind', (draft) => {
      const { scope, server, after, standing, steps, saved } = draft;
      const now = saved ? after : server;
      const { history, sync } = openJournal(store, scope, now);
      expect(present(history)).toEqual(standing);
      expect(history.steps).toHaveLength(steps);
      expect(isSaved(sync)).toBe(saved);
      expect(sync.conflict).toBeNull();
      // What is not with the server yet goes out as it was set, and can be undone first.
      if (!saved) expect((sync.inFlight ?? nextToSend(sync))!.document).toEqual(standing);
      expect(present(undo(history))).not.toEqual(standing);
    });

    it('sends the notes that wait at the desk', () => {
      const waiting = waitingNotes(about.notes.personKey);
      expect(waiting).toEqual(about.notes.notes);
      for (const note of waiting) expect(writeNoteSchema.parse(note)).toEqual(note);
    });

    it('goes on with a remark for several lines', () => {
      expect(readRun(kept.get(about.remarkRun.place)!, 'another')).toEqual(about.remarkRun.run);
    });

    it('goes on with a recording', () => {
      const recording = recordingSchema.parse(JSON.parse(kept.get(about.recording.place)!));
      expect(recording.steps).toHaveLength(about.recording.steps);
      expect(misfitOf(recordedSteps(recording), about.recording.pairs)).toBeNull();
    });

    it('knows the results of practice that were not sent', () => {
      expect(readWaiting(about.practice.personKey).map(({ requestKey }) => requestKey)).toEqual(about.practice.results);
    });

    it('knows how large a millimetre is on this screen', () => {
      expect(readScreen()).toEqual({ pxPerMm: 4.1, density: 1.5 });
    });
  });
}

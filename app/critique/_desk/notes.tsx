'use client';

import { useCallback, useEffect, useRef, useState, useSyncExternalStore } from 'react';
import { openDevice } from '@/app/_bench/session/device';
import { Button } from '@/app/_ui/Button';
import { Notice } from '@/app/_ui/Page';
import { type Answer, send } from '@/app/_ui/send';
import type { NoteView, WriteNote } from '@/shared/schemas/note';
import { counted } from '@/shared/text/number';
import { quoted } from '@/shared/text/quoted';

/**
 * Notes that are not on the server yet, why, and what can be done. `here` is the page to return to after signing in.
 */
export function Unsaved({ notes, here }: { notes: NoteSending; here: string }) {
  const { waiting, trouble, discard, sendAll } = notes;
  if (waiting.length === 0) return null;
  return (
    <Notice kind="warning" live="polite" title={`${counted(waiting.length, 'note')} not saved yet`}>
      <p>
        {trouble?.message ?? 'On the way.'} {waiting.length === 1 ? 'It is' : 'They are'} kept on this device and sent
        as soon as it can be.
      </p>
      {trouble?.signedOut && (
        <p>
          <a href={`/sign-in?next=${encodeURIComponent(here)}`} target="_blank" rel="noopener">
            Sign in again in a new window
          </a>
          , then come back here.
        </p>
      )}
      <ul>
        {waiting.map((note) => (
          <li key={note.requestKey}>
            {quoted(note.body)}{' '}
            <Button small kind="text" onClick={() => discard(note.requestKey)}>
              Discard
            </Button>
          </li>
        ))}
      </ul>
      <Button small onClick={() => void sendAll()}>
        Send now
      </Button>
    </Notice>
  );
}

/** The notes of a line, and those still being sent. */
export function useNotes(personKey: string, here: { proofId: string; specimenVersionId: string }, initial: NoteView[]) {
  const [notes, setNotes] = useState(initial);
  const put = useCallback(
    (note: NoteView) =>
      setNotes((all) =>
        all.some(({ id }) => id === note.id) ? all.map((one) => (one.id === note.id ? note : one)) : [...all, note],
      ),
    [],
  );
  const sending = useNoteSending(personKey, (note, { proofId, specimenVersionId }) => {
    if (proofId === here.proofId && specimenVersionId === here.specimenVersionId) put(note);
  });

  return {
    ...sending,
    notes,
    /** Changes a note that is on the server; returns the outcome. */
    async change(path: string, method: 'POST' | 'PUT', body: unknown): Promise<Answer<NoteView>> {
      const answer = await send<NoteView>(method, `/api/critique/notes/${path}`, body);
      if (answer.ok) put(answer.result);
      return answer;
    },
    forget: (id: string) => setNotes((all) => all.filter((note) => note.id !== id)),
  };
}

export type Notes = ReturnType<typeof useNotes>;

type Trouble = { message: string; signedOut: boolean };

/**
 * Notes being sent, of any line: stored on the device first and then sent. `saved` is called for each one the server
 * has accepted.
 */
export function useNoteSending(personKey: string, saved: (note: NoteView, written: WriteNote) => void) {
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const waiting = useWaitingNotes(personKey);
  const reported = useRef(saved);
  useEffect(() => {
    reported.current = saved;
  });

  const sendOne = useCallback(
    async (note: WriteNote) => {
      const answer = await send<NoteView>('POST', '/api/critique/notes', note);
      if (answer.ok) {
        dropWaiting(personKey, note.requestKey);
        reported.current(answer.result, note);
        setTrouble(null);
      } else setTrouble({ message: answer.message, signedOut: answer.signedOut });
      return answer;
    },
    [personKey],
  );

  const sendAll = useCallback(async () => {
    for (const note of waitingNotes(personKey)) {
      const answer = await sendOne(note);
      if (!answer.ok && answer.again) return;
    }
  }, [personKey, sendOne]);

  // Waiting notes are sent again when the network returns, and every quarter of a minute.
  useEffect(() => {
    const start = setTimeout(() => void sendAll(), 0);
    const again = setInterval(() => void sendAll(), 15_000);
    const online = () => void sendAll();
    window.addEventListener('online', online);
    return () => {
      clearTimeout(start);
      clearInterval(again);
      window.removeEventListener('online', online);
    };
  }, [sendAll]);

  return {
    waiting,
    trouble,
    sendAll,
    /** Stores a note and sends it. */
    write(note: WriteNote) {
      keepWaiting(personKey, note);
      return sendOne(note);
    },
    discard: (requestKey: string) => dropWaiting(personKey, requestKey),
  };
}

type NoteSending = ReturnType<typeof useNoteSending>;

/**
 * Notes that the server has not confirmed yet, stored on this device separately for each person, for any line. They are
 * stored before they are sent and removed only when the server has them.
 */
const placeOf = (personKey: string) => `kerncrit/${encodeURIComponent(personKey)}/notes-waiting`;
const notesChanged = 'kerncrit-notes-waiting';
const none: readonly WriteNote[] = [];
const lastRead = new Map<string, readonly WriteNote[]>();

export function waitingNotes(personKey: string): readonly WriteNote[] {
  const text = openDevice().store.get(placeOf(personKey));
  if (!text) return none;
  const known = lastRead.get(text);
  if (known) return known;
  const notes = readNotes(text);
  lastRead.clear();
  lastRead.set(text, notes);
  return notes;
}

function keepWaiting(personKey: string, note: WriteNote): void {
  write(personKey, [...waitingNotes(personKey).filter(({ requestKey }) => requestKey !== note.requestKey), note]);
}

function dropWaiting(personKey: string, requestKey: string): void {
  write(
    personKey,
    waitingNotes(personKey).filter((note) => note.requestKey !== requestKey),
  );
}

/** The waiting notes as they are now, in this window and in others. */
function useWaitingNotes(personKey: string): readonly WriteNote[] {
  return useSyncExternalStore(
    subscribeToNotes,
    () => waitingNotes(personKey),
    () => none,
  );
}

function write(personKey: string, notes: readonly WriteNote[]): void {
  const { store } = openDevice();
  if (notes.length === 0) store.remove(placeOf(personKey));
  else store.set(placeOf(personKey), JSON.stringify(notes));
  window.dispatchEvent(new Event(notesChanged));
}

function subscribeToNotes(tell: () => void): () => void {
  window.addEventListener(notesChanged, tell);
  window.addEventListener('storage', tell);
  return () => {
    window.removeEventListener(notesChanged, tell);
    window.removeEventListener('storage', tell);
  };
}

function readNotes(text: string): readonly WriteNote[] {
  try {
    const value: unknown = JSON.parse(text);
    return Array.isArray(value) ? (value as WriteNote[]) : none;
  } catch {
    return none;
  }
}

const textChanged = 'kerncrit-kept-text';

/** A text that survives a reload, a lost session or a closed window until it is cleared. Stored on this device only. */
export function useStoredText(personKey: string, name: string): [string, (text: string) => void] {
  const place = `kerncrit/${encodeURIComponent(personKey)}/${name}`;
  const text = useSyncExternalStore(
    subscribeToTexts,
    () => openDevice().store.get(place) ?? '',
    () => '',
  );
  const keep = useCallback(
    (next: string) => {
      const { store } = openDevice();
      if (next === '') store.remove(place);
      else store.set(place, next);
      window.dispatchEvent(new Event(textChanged));
    },
    [place],
  );
  return [text, keep];
}

function subscribeToTexts(tell: () => void): () => void {
  window.addEventListener(textChanged, tell);
  return () => window.removeEventListener(textChanged, tell);
}

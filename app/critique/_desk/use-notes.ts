'use client';
import { useCallback, useEffect, useState } from 'react';
import type { NoteView, WriteNote } from '@/shared/schemas/note';
import { send, type Answer } from './send';
import { dropWaiting, keepWaiting, useWaitingNotes, waitingNotes } from './waiting';

export type Trouble = { said: string; signedOut: boolean };

/** The notes of a line, and those still on their way. A note is kept on the device first and sent after. */
export function useNotes(personKey: string, here: { proofId: string; specimenVersionId: string }, initial: NoteView[]) {
  const [notes, setNotes] = useState(initial);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const waiting = useWaitingNotes(personKey);

  const put = useCallback((note: NoteView) => setNotes((all) => (all.some(({ id }) => id === note.id) ? all.map((one) => (one.id === note.id ? note : one)) : [...all, note])), []);

  const sendOne = useCallback(async (note: WriteNote) => {
    const answer = await send<NoteView>('POST', '/api/critique/notes', note);
    if (answer.ok) {
      dropWaiting(personKey, note.requestKey);
      if (note.proofId === here.proofId && note.specimenVersionId === here.specimenVersionId) put(answer.result);
      setTrouble(null);
    } else setTrouble({ said: answer.said, signedOut: answer.signedOut });
    return answer;
  }, [personKey, here.proofId, here.specimenVersionId, put]);

  const sendAll = useCallback(async () => {
    for (const note of waitingNotes(personKey)) {
      const answer = await sendOne(note);
      if (!answer.ok && answer.again) return;
    }
  }, [personKey, sendOne]);

  // What waits is sent again when the network comes back, and every quarter of a minute.
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
    notes,
    waiting,
    trouble,
    sendAll,
    /** Keeps a note and sends it. */
    write(note: WriteNote) {
      keepWaiting(personKey, note);
      return sendOne(note);
    },
    discard: (requestKey: string) => dropWaiting(personKey, requestKey),
    /** Changes a note that the server has; the answer says what came of it. */
    async change(path: string, method: 'POST' | 'PUT', body: unknown): Promise<Answer<NoteView>> {
      const answer = await send<NoteView>(method, `/api/critique/notes/${path}`, body);
      if (answer.ok) put(answer.result);
      return answer;
    },
    forget: (id: string) => setNotes((all) => all.filter((note) => note.id !== id)),
  };
}

export type Notes = ReturnType<typeof useNotes>;

'use client';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { NoteView, WriteNote } from '@/shared/schemas/note';
import { send } from './send';
import { dropWaiting, keepWaiting, useWaitingNotes, waitingNotes } from './waiting';

export type Trouble = { message: string; signedOut: boolean };

/** Notes on their way, of whatever line: kept on the device first and sent after. `saved` is told of each that the server has now. */
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
    waiting,
    trouble,
    sendAll,
    /** Keeps a note and sends it. */
    write(note: WriteNote) {
      keepWaiting(personKey, note);
      return sendOne(note);
    },
    discard: (requestKey: string) => dropWaiting(personKey, requestKey),
  };
}

export type NoteSending = ReturnType<typeof useNoteSending>;

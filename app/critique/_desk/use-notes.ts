'use client';
import { useCallback, useState } from 'react';
import type { NoteView } from '@/shared/schemas/note';
import { send, type Answer } from './send';
import { useNoteSending } from './use-note-sending';

/** The notes of a line, and those still on their way. */
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

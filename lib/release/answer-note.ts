import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { retryOnConflict } from '@/lib/data/retry';
import { alreadySaid, nextSeq } from '@/lib/review/notes';
import { answerNoteSchema } from '@/shared/schemas/note';
import { releaseSnapshotSchema } from '@/shared/schemas/release';

/** A student's answer to a note that was released to them. A note that was not is not there. */
export const answerNote = operation({
  name: 'answer-note',
  allow: 'proof:send',
  input: answerNoteSchema,
  run: ({ data, now }, { noteId, afterSeq, body }) =>
    retryOnConflict(async () => {
      const note = await data.notes.ofSelf(noteId);
      if (!note || !(await wasReleased(data, noteId, note.proofItem.proof.id))) throw notFound();
      const authorId = note.proofItem.proof.memberId;
      if (!alreadySaid(note.entries, { authorId, afterSeq, body })) {
        await data.notes.addEntry({ noteId, seq: nextSeq(note.entries), authorId, body, replacesSeq: null, now });
      }
      return { noteId };
    }),
});

/** The whole of the release is looked through: what is in it was shown, and nothing else was. */
async function wasReleased(data: ScopedData, noteId: string, proofId: string): Promise<boolean> {
  const releases = await data.releases.ownOfProof(proofId);
  return releases.some(({ snapshot }) =>
    z
      .parse(releaseSnapshotSchema, JSON.parse(snapshot))
      .lines.some(({ notes }) => notes.some(({ id }) => id === noteId)),
  );
}

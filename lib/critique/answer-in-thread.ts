import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { retryOnConflict } from '@/lib/data/retry';
import { answerNoteSchema, type NoteView } from '@/shared/schemas/note';
import { shown } from './edit-note';
import { nextSeq } from './next-seq';

/** Adds to the thread of a note, as staff. Once the note is released, its student reads the answer at once. */
export const answerInThread = operation({
  name: 'answer-in-thread',
  allow: 'critique:write',
  input: answerNoteSchema,
  run: ({ data, now }, { noteId, afterSeq, body }): Promise<NoteView> =>
    retryOnConflict(async () => {
      const note = await data.notes.byId(noteId);
      const me = note && (await data.markTasks.marker(note.proofItem.proof.round.exercise.courseId));
      if (!note || !me) throw notFound();
      if (!alreadySaid(note.entries, { authorId: me.id, afterSeq, body }))
        await data.notes.addEntry({
          noteId,
          seq: nextSeq(note.entries),
          authorId: me.id,
          body,
          replacesSeq: null,
          now,
        });
      return shown(data, noteId);
    }),
});

type Said = { seq: number; authorId: string | null; body: string };

/** The same words by the same person after the last that they saw: the answer came twice (a lost reply, a double press). */
export const alreadySaid = (
  entries: readonly Said[],
  { authorId, afterSeq, body }: { authorId: string; afterSeq: number; body: string },
): boolean => entries.some((entry) => entry.seq > afterSeq && entry.authorId === authorId && entry.body === body);

import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { spacingOf } from '@/lib/draft/spacing-of';
import { editNoteSchema, type NoteView } from '@/shared/schemas/note';
import { runOf } from '@/shared/critique/run';
import { standingBody } from '@/shared/critique/standing-body';
import { nextSeq } from './next-seq';
import { noteView } from './note-view';
import { suggestionFor } from './write-note';

/** Gives a note other words or another suggestion. What it said before is kept; who read an older version changes nothing. */
export const editNote = operation({
  name: 'edit-note',
  allow: 'critique:write',
  input: editNoteSchema,
  run: async ({ data, now }, { noteId, version, body, suggestion }): Promise<NoteView> => {
    const note = await data.notes.byId(noteId);
    const me = note && (await data.markTasks.marker(note.proofItem.proof.round.exercise.courseId));
    if (!note || !me) throw notFound();
    const pairs = spacingOf(note.proofItem).offsets.length;
    const fitting = suggestionFor(runOf(note.fromPair, note.toPair, pairs), suggestion, pairs);
    const before = noteView(note, true);
    await data.transaction(async (inside) => {
      if (!(await inside.notes.change(noteId, version, { suggestion: fitting }))) throw changedMeanwhile(before);
      if (body !== standingBody(before.entries)) {
        await inside.notes.addEntry({
          noteId,
          seq: nextSeq(note.entries),
          authorId: me.id,
          body,
          replacesSeq: note.entries[0]?.seq ?? 1,
          now,
        });
      }
    });
    return shown(data, noteId);
  },
});

export const changedMeanwhile = (note: NoteView): AppError =>
  new AppError(
    'CONFLICT',
    `This note was changed meanwhile. It now says: “${standingBody(note.entries)}”. What you typed is still here; compare the two and save again.`,
    { body: { note } },
  );

/** The note as it stands now. */
export async function shown(data: ScopedData, noteId: string): Promise<NoteView> {
  const note = await data.notes.byId(noteId);
  if (!note) throw notFound();
  return noteView(note, true);
}

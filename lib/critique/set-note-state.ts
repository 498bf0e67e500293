import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { noteStateSchema, type NoteView } from '@/shared/schemas/note';
import { changedMeanwhile, shown } from './edit-note';
import { noteView } from './note-view';

/** Settles a note or opens it again; takes it away, or brings it back. Nothing is deleted. */
export const setNoteState = operation({
  name: 'set-note-state',
  allow: 'critique:write',
  input: noteStateSchema,
  run: async ({ data, now }, { noteId, version, to }): Promise<NoteView> => {
    const note = await data.notes.byId(noteId);
    if (!note) throw notFound();
    const change = {
      open: { settledAt: null },
      settled: { settledAt: now },
      removed: { removedAt: now },
      restored: { removedAt: null },
    }[to];
    if (!(await data.notes.change(noteId, version, change))) throw changedMeanwhile(noteView(note, true));
    return shown(data, noteId);
  },
});

import type { NoteRow } from '@/lib/data/notes';
import type { NoteEntryView, NoteView } from '@/shared/schemas/note';
import { suggestionOf } from './stored';

/** A note as staff see it. Where names are hidden, a student's answer has no name on it either. */
export function noteView(note: NoteRow, hideStudents: boolean): NoteView {
  return {
    id: note.id,
    specimenVersionId: note.proofItem.specimenVersionId,
    fromPair: note.fromPair,
    toPair: note.toPair,
    suggestion: suggestionOf(note),
    settled: note.settledAt !== null,
    version: note.version,
    entries: note.entries.map((entry) => entryView(entry, hideStudents)),
  };
}

type EntryRow = NoteRow['entries'][number];

export function entryView(entry: EntryRow, hideStudents: boolean): NoteEntryView {
  const by = entry.author?.role === 'student' ? 'student' : 'staff';
  const nameless = by === 'student' && hideStudents;
  return {
    seq: entry.seq,
    by,
    author: nameless ? null : (entry.author?.user?.name ?? null),
    body: entry.body,
    replaces: entry.replacesSeq,
    at: entry.at.toISOString(),
  };
}

import * as z from 'zod/mini';
import { entryView } from '@/lib/review/notes';
import type { ScopedData } from '@/lib/data';
import type { NoteEntryView } from '@/shared/schemas/note';
import { releaseSnapshotSchema, type ReleaseSnapshot } from '@/shared/schemas/release';
import { nameTeachers } from './name-teachers';

export type ReadRelease = {
  number: number;
  releasedAt: Date;
  snapshot: ReleaseSnapshot;
  answers: Record<string, NoteEntryView[]>;
};

/** The newest release of a proof, with the names of those who wrote; `own` for the student it went out to, else for staff. */
export async function readRelease(data: ScopedData, proofId: string, own: boolean): Promise<ReadRelease | null> {
  const [row] = await (own ? data.releases.ownOfProof(proofId) : data.releases.ofProof(proofId));
  if (!row) return null;
  const snapshot = z.parse(releaseSnapshotSchema, JSON.parse(row.snapshot));
  const threads = await threadsOf(data, snapshot, own);
  return {
    number: row.number,
    releasedAt: row.releasedAt,
    snapshot: await nameTeachers(data, withAuthors(snapshot, threads)),
    answers: answersTo(snapshot, threads),
  };
}

type Threads = Map<string, NoteEntryView[]>;

async function threadsOf(data: ScopedData, snapshot: ReleaseSnapshot, own: boolean): Promise<Threads> {
  const ids = snapshot.lines.flatMap(({ notes }) => notes.map(({ id }) => id));
  const entries = await (own ? data.notes.threadsOfSelf(ids) : data.notes.threads(ids));
  const threads: Threads = new Map();
  for (const entry of entries)
    threads.set(entry.noteId, [...(threads.get(entry.noteId) ?? []), entryView(entry, false)]);
  return threads;
}

/** Names are not kept in a release; they are put in from the threads as long as the people are there. */
const withAuthors = (snapshot: ReleaseSnapshot, threads: Threads): ReleaseSnapshot => ({
  ...snapshot,
  lines: snapshot.lines.map((line) => ({
    ...line,
    notes: line.notes.map((note) => ({
      ...note,
      entries: note.entries.map((entry) => ({
        ...entry,
        author: threads.get(note.id)?.find(({ seq }) => seq === entry.seq)?.author ?? null,
      })),
    })),
  })),
});

/** Answers only: an edit of what was released waits for a correction. */
const answersTo = (snapshot: ReleaseSnapshot, threads: Threads): Record<string, NoteEntryView[]> =>
  Object.fromEntries(
    snapshot.lines.flatMap(({ notes }) =>
      notes.map((note) => {
        const last = Math.max(0, ...note.entries.map(({ seq }) => seq));
        return [note.id, (threads.get(note.id) ?? []).filter(({ seq, replaces }) => seq > last && replaces === null)];
      }),
    ),
  );

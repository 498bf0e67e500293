import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { idSchema, type NoteEntryView } from '@/shared/schemas/note';
import { releaseSnapshotSchema, type ReleaseSnapshot } from '@/shared/schemas/release';
import { entryView } from '@/lib/critique/note-view';
import { nameTeachers } from './name-teachers';
import { changesSince, type LineSince } from './changes-since';

export type ShownRelease = {
  number: number;
  releasedAt: string;
  snapshot: ReleaseSnapshot;
  /** What was answered since in the threads of released notes, by note. */
  answers: Record<string, NoteEntryView[]>;
  /** How the lines stand in the student's present drafts; empty for staff. */
  since: LineSince[];
  mayAnswer: boolean;
};

/**
 * What was released from a proof: to its student, and to staff as the student sees it. Null before there is a release.
 * Nothing is read here but the release itself and the threads of the notes in it.
 */
export const showRelease = operation({
  name: 'show-release',
  allow: 'release:see',
  input: z.strictObject({ proofId: idSchema }),
  run: async ({ data, actor }, { proofId }): Promise<{ release: ShownRelease | null; elsewhere: { proofId: string } | null }> => {
    const proof = await data.proofs.byId(proofId);
    if (!proof) throw notFound();
    const own = actor.kind === 'person' && proof.member.userId === actor.userId;
    const [row, elsewhere] = own
      ? await Promise.all([data.releases.ownOfProof(proofId).then(([newest]) => newest), data.releases.ownFromAnother(proofId)])
      : [(await data.releases.ofProof(proofId))[0], null];
    if (!row) return { release: null, elsewhere: elsewhere && { proofId: elsewhere.proofId } };
    const snapshot = z.parse(releaseSnapshotSchema, JSON.parse(row.snapshot));
    const threads = await threadsOf(data, snapshot, own);
    return {
      release: {
        number: row.number,
        releasedAt: row.releasedAt.toISOString(),
        snapshot: await nameTeachers(data, withAuthors(snapshot, threads)),
        answers: answersTo(snapshot, threads),
        since: own ? await changesSince(data, proof, snapshot) : [],
        mayAnswer: own,
      },
      elsewhere: elsewhere && elsewhere.number > row.number ? { proofId: elsewhere.proofId } : null,
    };
  },
});

type Threads = Map<string, NoteEntryView[]>;

async function threadsOf(data: ScopedData, snapshot: ReleaseSnapshot, own: boolean): Promise<Threads> {
  const ids = snapshot.lines.flatMap(({ notes }) => notes.map(({ id }) => id));
  const entries = await (own ? data.notes.threadsOfSelf(ids) : data.notes.threads(ids));
  const threads: Threads = new Map();
  for (const entry of entries) threads.set(entry.noteId, [...(threads.get(entry.noteId) ?? []), entryView(entry, false)]);
  return threads;
}

/** Names are not kept in a release; they are put in from the threads as long as the people are there. */
const withAuthors = (snapshot: ReleaseSnapshot, threads: Threads): ReleaseSnapshot => ({
  ...snapshot,
  lines: snapshot.lines.map((line) => ({
    ...line,
    notes: line.notes.map((note) => ({
      ...note,
      entries: note.entries.map((entry) => ({ ...entry, author: threads.get(note.id)?.find(({ seq }) => seq === entry.seq)?.author ?? null })),
    })),
  })),
});

/** Answers only: an edit of what was released waits for a correction. */
const answersTo = (snapshot: ReleaseSnapshot, threads: Threads): Record<string, NoteEntryView[]> =>
  Object.fromEntries(snapshot.lines.flatMap(({ notes }) => notes.map((note) => {
    const last = Math.max(0, ...note.entries.map(({ seq }) => seq));
    return [note.id, (threads.get(note.id) ?? []).filter(({ seq, replaces }) => seq > last && replaces === null)];
  })));

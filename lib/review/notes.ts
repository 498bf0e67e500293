import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import type { NoteRow } from '@/lib/data/notes';
import { retryOnConflict } from '@/lib/data/retry';
import { spacingOf } from '@/lib/rows/spacing';
import { runOf, currentBody } from '@/shared/critique/run';
import { teaches } from '@/shared/schemas/course';
import {
  answerNoteSchema,
  editNoteSchema,
  type NoteEntryView,
  noteStateSchema,
  type NoteView,
  writeNoteSchema,
} from '@/shared/schemas/note';
import type { Run } from '@/shared/schemas/spacing';
import { proofContext } from './context';
import { fixCounted, followCounted } from './counted';
import { suggestionOf } from '@/lib/rows/spacing';

/** Pins a note to a pair, a run or the line. Sent again with the same key it is the same note. */
export const writeNote = operation({
  name: 'write-note',
  allow: 'critique:write',
  input: writeNoteSchema,
  run: ({ data, now }, note): Promise<NoteView> =>
    retryOnConflict(async () => {
      const context = await proofContext(data, note.proofId);
      const { me, task, second, hidden } = context;
      const item = await data.notes.item(note.proofId, note.specimenVersionId);
      if (!item) throw notFound();
      const there = await data.notes.byKey(item, note.requestKey);
      if (there) return noteView(there, hidden);
      const pairs = spacingOf(item).offsets.length;
      const run = runIn(note, pairs);
      const suggestion = suggestionFor(run, note.suggestion, pairs);
      const { requestKey, body } = note;
      await fixCounted(data, context, now);
      await data.notes.create({
        proofItemId: item.id,
        requestKey,
        body,
        suggestion,
        now,
        authorId: me.id,
        // Wherever the second marker writes it, the note is theirs: it may not reach the first before its time.
        taskId: (second?.markerId === me.id ? second.id : task?.id) ?? null,
        fromPair: run?.first ?? null,
        toPair: run?.last ?? null,
      });
      await followCounted(data, context);
      const made = await data.notes.byKey(item, requestKey);
      return noteView(made!, hidden);
    }),
});

/** Where a note is pinned, or an error that quotes what the line does not have. */
function runIn({ fromPair, toPair }: { fromPair: number | null; toPair: number | null }, pairs: number): Run | null {
  try {
    return runOf(fromPair, toPair, pairs);
  } catch (error) {
    throw new AppError(
      'INVALID',
      `${(error as RangeError).message} The note was not kept; choose the pair on the line and send it again.`,
    );
  }
}

/** A suggestion that fits its run, or an error that says how many offsets it needs. */
function suggestionFor(run: Run | null, suggestion: number[] | null, pairs: number): number[] | null {
  if (suggestion === null) return null;
  const needed = run === null ? pairs : run.last - run.first + 1;
  if (suggestion.length === needed) return suggestion;
  throw new AppError(
    'INVALID',
    `The suggestion has ${suggestion.length} offsets where the note speaks of ${needed} pairs. The note was not kept; set the suggestion again.`,
  );
}

/**
 * Changes a note's text or suggestion. The earlier text is kept; a request based on an older version changes nothing.
 */
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
      if (body !== currentBody(before.entries)) {
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

const changedMeanwhile = (note: NoteView): AppError =>
  new AppError(
    'CONFLICT',
    `This note was changed meanwhile. It now says: “${currentBody(note.entries)}”. What you typed is still here; compare the two and save again.`,
    { body: { note } },
  );

/** The note as it is now. */
async function shown(data: ScopedData, noteId: string): Promise<NoteView> {
  const note = await data.notes.byId(noteId);
  if (!note) throw notFound();
  return noteView(note, true);
}

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
      if (!alreadyWritten(note.entries, { authorId: me.id, afterSeq, body }))
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

type WrittenEntry = { seq: number; authorId: string | null; body: string };

/**
 * The same text by the same person after the last one they saw: the reply was sent twice (a lost answer, a double
 * press).
 */
export const alreadyWritten = (
  entries: readonly WrittenEntry[],
  { authorId, afterSeq, body }: { authorId: string; afterSeq: number; body: string },
): boolean => entries.some((entry) => entry.seq > afterSeq && entry.authorId === authorId && entry.body === body);

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
  const by = entry.author && !teaches(entry.author.role) ? 'student' : 'staff';
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

/** The next place in a thread. Two who take it at once meet the unique key, and one of them reads again. */
export const nextSeq = (entries: readonly { seq: number }[]): number =>
  Math.max(0, ...entries.map(({ seq }) => seq)) + 1;

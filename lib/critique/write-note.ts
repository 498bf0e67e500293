import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { retryOnConflict } from '@/lib/data/retry';
import { spacingOf } from '@/lib/draft/spacing-of';
import { runOf, type Run } from '@/shared/critique/run';
import { writeNoteSchema, type NoteView } from '@/shared/schemas/note';
import { noteView } from './note-view';
import { proofInHand } from './proof-in-hand';

/** Pins a note to a pair, a run or the line. Sent again with the same key it is the same note. */
export const writeNote = operation({
  name: 'write-note',
  allow: 'critique:write',
  input: writeNoteSchema,
  run: ({ data, now }, note): Promise<NoteView> =>
    retryOnConflict(async () => {
      const { me, task, second, hidden } = await proofInHand(data, note.proofId);
      const item = await data.notes.item(note.proofId, note.specimenVersionId);
      if (!item) throw notFound();
      const there = await data.notes.byKey(item.id, note.requestKey);
      if (there) return noteView(there, hidden);
      const pairs = spacingOf(item).offsets.length;
      const run = runIn(note, pairs);
      const suggestion = suggestionFor(run, note.suggestion, pairs);
      const { requestKey, body } = note;
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
      const made = await data.notes.byKey(item.id, requestKey);
      return noteView(made!, hidden);
    }),
});

/** Where a note is pinned, or an error that quotes what the line does not have. */
export function runIn(
  { fromPair, toPair }: { fromPair: number | null; toPair: number | null },
  pairs: number,
): Run | null {
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
export function suggestionFor(run: Run | null, suggestion: number[] | null, pairs: number): number[] | null {
  if (suggestion === null) return null;
  const needed = run === null ? pairs : run.last - run.first + 1;
  if (suggestion.length === needed) return suggestion;
  throw new AppError(
    'INVALID',
    `The suggestion has ${suggestion.length} offsets where the note speaks of ${needed} pairs. The note was not kept; set the suggestion again.`,
  );
}

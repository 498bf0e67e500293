import type { NoteEntryView } from '@/shared/schemas/note';

/** What a note says now: its first entry, or the last edit of it. Answers in the thread are not the note. */
export function standingBody(entries: readonly NoteEntryView[]): string {
  return lastEdit(entries, entries[0]?.seq ?? 1)?.body ?? '';
}

/** The thread as it is read: each entry in its place with its latest wording, and whether it was edited. */
export function standingThread(entries: readonly NoteEntryView[]): { entry: NoteEntryView; edited: boolean }[] {
  return entries
    .filter(({ replaces }) => replaces === null)
    .map((original) => {
      const last = lastEdit(entries, original.seq) ?? original;
      return { entry: { ...original, body: last.body }, edited: last !== original };
    });
}

function lastEdit(entries: readonly NoteEntryView[], seq: number): NoteEntryView | undefined {
  return [...entries].reverse().find((entry) => entry.seq === seq || entry.replaces === seq);
}

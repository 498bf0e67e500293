import type { NoteEntryView } from '@/shared/schemas/note';
import type { Pack } from '@/shared/schemas/pack';
import type { Run, Spacing } from '@/shared/schemas/spacing';

/**
 * Checks where a note is pinned and puts its ends in order; null is the whole line.
 * @throws RangeError that quotes a pair which the line does not have, or an end without its other.
 */
export function runOf(fromPair: number | null, toPair: number | null, pairCount: number): Run | null {
  if (fromPair === null && toPair === null) return null;
  if (fromPair === null || toPair === null) throw new RangeError('A run needs both its first and its last pair.');
  const [first, last] = fromPair <= toPair ? [fromPair, toPair] : [toPair, fromPair];
  if (first < 0 || last >= pairCount)
    throw new RangeError(
      `The line has ${pairCount} pairs; ${first === last ? `pair ${first + 1}` : `pairs ${first + 1} to ${last + 1}`} is not among them.`,
    );
  return { first, last };
}

/** Whether the gaps of a run, or of the whole line where its ends are null, are the same in two spacings of a line. */
export function unchangedIn(fromPair: number | null, toPair: number | null, then: Spacing, now: Spacing): boolean {
  if (then.tracking !== now.tracking || then.offsets.length !== now.offsets.length) return false;
  const [first, last] = [fromPair ?? 0, toPair ?? then.offsets.length - 1];
  return then.offsets.every((offset, pair) => pair < first || pair > last || offset === now.offsets[pair]);
}

/** The letters of a run, as set: `AV` for a pair, `AVA` for two. The whole line for null. */
export function lettersOf(letters: readonly string[], run: Run | null): string {
  return (run === null ? letters : letters.slice(run.first, run.last + 2)).join('').trim();
}

/**
 * The letters of a line one by one, with the space after those that end a word, so that a pair across a space is read
 * as one: `N T`.
 */
export const spacedLetters = (pack: Pick<Pack, 'letters' | 'glyphs' | 'wordSpace'>): string[] =>
  pack.letters.map((glyph, index) => `${pack.glyphs[glyph]!.cluster}${(pack.wordSpace[index] ?? 0) > 0 ? ' ' : ''}`);

/** What a note says now: its first entry, or the last edit of it. Answers in the thread are not the note. */
export function currentBody(entries: readonly NoteEntryView[]): string {
  return lastEdit(entries, entries[0]?.seq ?? 1)?.body ?? '';
}

/** The thread as it is read: each entry in its place with its latest wording, and whether it was edited. */
export function currentThread(entries: readonly NoteEntryView[]): { entry: NoteEntryView; edited: boolean }[] {
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

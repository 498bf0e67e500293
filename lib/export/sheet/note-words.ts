import { lettersOf, runOf, spacedLetters, currentThread } from '@/shared/critique/run';
import type { ReleasedLine, ReleasedNote } from '@/shared/schemas/release';
import { signed } from '@/shared/text/number';
import type { Sheet } from './sheet';

/** A note in the words in which it is printed. `sign` is its number on the line, as on the page of the release. */
export type NoteWords = {
  sign: number;
  /** Its pairs, both ends included; null for the whole line. */
  run: { first: number; last: number } | null;
  where: string;
  body: string;
  author: string | null;
  suggestion: string | null;
  thread: string[];
};

/** The notes of a line in the order of the margin. */
export function noteWords(line: ReleasedLine, drawing: Sheet['lines'][number], answers: Sheet['answers']): NoteWords[] {
  const letters = spacedLetters(drawing.pack);
  return sorted(line.notes).map((note, index) => {
    const run = runOf(note.fromPair, note.toPair, drawing.spacing.offsets.length);
    const [first, ...thread] = currentThread([...note.entries, ...(answers[note.id] ?? [])]);
    return {
      sign: index + 1,
      run,
      where: run === null ? 'the line' : lettersOf(letters, run),
      body: first?.entry.body ?? '',
      author: first?.entry.author ?? null,
      suggestion: note.suggestion && suggestionWords(note.suggestion, run?.first ?? 0, drawing, letters),
      thread: thread.map(
        ({ entry }) => `${entry.author ?? (entry.by === 'student' ? 'The student' : 'A marker')}: ${entry.body}`,
      ),
    };
  });
}

export const sorted = (notes: readonly ReleasedNote[]): ReleasedNote[] =>
  notes.toSorted(
    (one, other) => (one.fromPair ?? -1) - (other.fromPair ?? -1) || (one.toPair ?? -1) - (other.toPair ?? -1),
  );

/** Only the pairs that would change. */
function suggestionWords(
  suggestion: readonly number[],
  first: number,
  { spacing }: Sheet['lines'][number],
  letters: readonly string[],
): string | null {
  const changed = suggestion.flatMap((offset, index) => {
    const pair = first + index;
    const sent = spacing.offsets[pair];
    return sent === undefined || sent === offset
      ? []
      : [`${lettersOf(letters, { first: pair, last: pair })} ${signed(offset)} (sent ${signed(sent)})`];
  });
  return changed.length === 0 ? 'Suggested as it was sent.' : `Suggested offset: ${changed.join(', ')}`;
}

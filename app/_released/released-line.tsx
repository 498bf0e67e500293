import type { ReactNode } from 'react';
import { Disclosure } from '@/app/_ui/Disclosure';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { lineWords } from '@/shared/line/line-words';
import type { GapMark, GapTie } from '@/shared/line/shapes';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import type { DrawnLine } from '@/lib/release/released';
import { changeWords, type PairChange } from '@/shared/critique/pair-change';
import { lettersOf, runOf, spacedLetters, currentThread } from '@/shared/critique/run';
import { suggestedSpacing } from '@/shared/critique/suggested-spacing';
import type { NoteEntryView } from '@/shared/schemas/note';
import type { ReleasedLine, ReleasedNote } from '@/shared/schemas/release';
import type { Size } from '@/shared/schemas/spacing';
import { heldTogether, signed } from '@/shared/text/number';
import { findingText } from '@/shared/wording/finding-words';
import { quoted } from '@/shared/text/quoted';
import type { FontUnits } from '@/shared/units';
import style from './released.module.css';

/** Shown under a note: its id, the last entry of its thread, and its name for screen readers. */
export type UnderNote = (noteId: string, lastSeq: number, name: string) => ReactNode;

type Props = {
  line: ReleasedLine;
  drawing: DrawnLine;
  /** Its place in the exercise, from 1. */
  place: number;
  beside: ReactNode;
};

type NotedProps = Props & {
  answers: Record<string, NoteEntryView[]>;
  changes: Record<string, PairChange[]>;
  underNote?: UnderNote;
  /** Least width of the frame, so that all lines of the page are as large beside one another as in use. */
  room: FontUnits;
};

/**
 * One line as it was sent, its notes in the margin, tied to their pairs; what the measure found, if the exercise shows
 * it.
 */
export function NotedLine({ line, drawing, place, answers, changes, underNote, beside, room }: NotedProps) {
  const letters = spacedLetters(drawing.pack);
  const notes = line.notes.toSorted(
    (one, other) => (one.fromPair ?? -1) - (other.fromPair ?? -1) || (one.toPair ?? -1) - (other.toPair ?? -1),
  );
  return (
    <article className={style.line} aria-label={line.text}>
      <div className={style.drawn}>
        <SheetFrame ground={drawing.ground}>
          <LineDrawing
            pack={drawing.pack}
            spacing={drawing.spacing}
            under={drawing.began}
            ties={tiesOf(notes)}
            room={room}
          />
        </SheetFrame>
        <Words drawing={drawing} place={place} beside={beside} />
        <Measured line={line} drawing={drawing} letters={letters} room={room} />
      </div>
      <div className={style.notes}>
        {notes.map((note, index) => (
          <Note
            key={note.id}
            note={note}
            sign={index + 1}
            letters={letters}
            drawing={drawing}
            answers={answers[note.id] ?? []}
            changes={changes[note.id] ?? []}
            under={underNote}
          />
        ))}
      </div>
    </article>
  );
}

/** A line that nobody wrote a note on: small, in a row with others like it. */
export function UnnotedLine({ line, drawing, place, beside, size }: Props & { size: Size }) {
  return (
    <article className={style.unnoted} aria-label={line.text}>
      <SheetFrame ground={drawing.ground}>
        <LineDrawing pack={drawing.pack} spacing={drawing.spacing} under={drawing.began} size={size} />
      </SheetFrame>
      <Words drawing={drawing} place={place} beside={beside} />
      <Measured line={line} drawing={drawing} letters={spacedLetters(drawing.pack)} />
    </article>
  );
}

/** Face, size and ground of a line, and where it goes on. */
function Words({ drawing, place, beside }: Pick<Props, 'drawing' | 'place' | 'beside'>) {
  return (
    <p className="work-line-words">
      <span>
        {place}. {lineWords(drawing)}
        {drawing.began && '; the outlines under it are what the line began from'}
      </span>
      {beside}
    </p>
  );
}

type MeasuredProps = { line: ReleasedLine; drawing: DrawnLine; letters: readonly string[]; room?: FontUnits };

function Measured({ line, drawing, letters, room }: MeasuredProps) {
  return (
    <>
      {line.deviations && (
        <ReleasedDeviations deviations={line.deviations} drawing={drawing} letters={letters} room={room} />
      )}
      {line.usual.length > 0 && (
        <ul>
          {line.usual.map((finding, index) => (
            <li key={index}>{heldTogether(findingText(finding))}</li>
          ))}
        </ul>
      )}
    </>
  );
}

type NoteProps = {
  note: ReleasedNote;
  sign: number;
  letters: readonly string[];
  drawing: DrawnLine;
  answers: NoteEntryView[];
  changes: PairChange[];
  under?: UnderNote;
};

function Note({ note, sign, letters, drawing, answers, changes, under }: NoteProps) {
  const run = runOf(note.fromPair, note.toPair, drawing.spacing.offsets.length);
  const where = run === null ? 'the line' : lettersOf(letters, run);
  const name = `Note ${sign} on ${where}, ${drawing.pack.text}`;
  const [first, ...thread] = currentThread([...note.entries, ...answers]);
  const lastSeq = Math.max(0, ...note.entries.map(({ seq }) => seq), ...answers.map(({ seq }) => seq));
  return (
    <section className={style.note} aria-label={name}>
      <p>
        <span className={style.sign}>{sign}</span> <strong className="plain">{where}</strong>
      </p>
      <p>{first?.entry.body}</p>
      {first?.entry.author && <p className={style.by}>{first.entry.author}</p>}
      {note.suggestion && (
        <Disclosure
          summary={
            <>
              The suggestion in place:{' '}
              <span className="figure-text">{note.suggestion.map((offset) => signed(offset)).join(', ')}</span>
            </>
          }
        >
          <SheetFrame
            ground={drawing.ground}
            caption="As suggested, fitted to the margin; the outlines under it are the line as it was sent."
          >
            <LineDrawing
              pack={drawing.pack}
              spacing={suggestedSpacing(drawing.spacing, run, note.suggestion)}
              under={drawing.spacing}
              label={`${drawing.pack.text}, ${where} as suggested`}
            />
          </SheetFrame>
        </Disclosure>
      )}
      {changes.map((change) => (
        <p key={change.pair} className={style.change}>
          {changes.length > 1 && `${lettersOf(letters, { first: change.pair, last: change.pair })}: `}
          {changeWords(change)}
        </p>
      ))}
      {thread.map(({ entry }) => (
        <p key={entry.seq} className={style.answer}>
          {entry.body}{' '}
          <span className={style.by}>{entry.author ?? (entry.by === 'student' ? 'the student' : 'a marker')}</span>
        </p>
      ))}
      {under?.(note.id, lastSeq, name)}
    </section>
  );
}

/** A hairline from each pair or run that has notes, with their signs at its end. */
function tiesOf(notes: readonly ReleasedNote[]): GapTie[] {
  const ties = new Map<string, GapTie>();
  notes.forEach(({ fromPair, toPair }, index) => {
    if (fromPair === null || toPair === null) return;
    const key = `${fromPair}-${toPair}`;
    const known = ties.get(key);
    ties.set(key, { from: fromPair, to: toPair, sign: known ? `${known.sign}·${index + 1}` : String(index + 1) });
  });
  return [...ties.values()];
}

type ReleasedDeviationsProps = {
  deviations: NonNullable<ReleasedLine['deviations']>;
  drawing: DrawnLine;
  letters: readonly string[];
  room?: FontUnits;
};

/**
 * The line compared with the nearest reference, on request: in sentences, as wedges under the gaps, and pair by pair.
 */
function ReleasedDeviations({ deviations, drawing, letters, room }: ReleasedDeviationsProps) {
  const outside = deviations.pairs.filter(({ within }) => !within);
  const sentences = deviations.findings.filter(({ weight }) => weight !== 'fact');
  return (
    <Disclosure
      summary={
        <>
          Beside the reference{deviations.author && <> by {deviations.author}</>}:{' '}
          {outside.length === 0
            ? 'every pair within tolerance'
            : `${outside.length} of ${deviations.pairs.length} pairs outside tolerance`}
        </>
      }
    >
      <SheetFrame ground={drawing.ground}>
        <LineDrawing
          pack={drawing.pack}
          spacing={drawing.spacing}
          marks={outside.map(markOf)}
          label={null}
          room={room}
        />
      </SheetFrame>
      {sentences.length > 0 && (
        <ul>
          {sentences.map((finding, index) => (
            <li key={index}>{heldTogether(findingText(finding))}</li>
          ))}
        </ul>
      )}
      {outside.length > 0 && (
        <p className="plain">
          {outside
            .map(({ index, rest }) => `${lettersOf(letters, { first: index, last: index })} ${signed(rest)}`)
            .join(', ')}{' '}
          (in 1/1000 em, overall tracking discounted)
        </p>
      )}
      {outside.some(({ reason }) => reason) && (
        <ul>
          {outside
            .filter(({ reason }) => reason)
            .map(({ index, reason }) => (
              <li key={index}>
                {lettersOf(letters, { first: index, last: index })}: {quoted(reason!)}
              </li>
            ))}
        </ul>
      )}
    </Disclosure>
  );
}

function markOf({ index, rest, tolerance }: ReleasedDeviationsProps['deviations']['pairs'][number]): GapMark {
  const share = Math.abs(rest) / Math.max(1, tolerance);
  return { gap: index, fault: rest > 0 ? 'wide' : 'tight', strength: share > 3 ? 3 : share > 2 ? 2 : 1 };
}

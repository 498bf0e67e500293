import { runOf, currentThread } from '@/shared/critique/run';
import type { NoteEntryView } from '@/shared/schemas/note';
import type { Pack } from '@/shared/schemas/pack';

/** By the Web Annotation Protocol, 4.1: JSON-LD with the profile of the model. */
export const annotationType = 'application/ld+json; profile="http://www.w3.org/ns/anno.jsonld"';

/** A note with its line, on the way out. */
export type OutgoingNote = {
  id: string;
  fromPair: number | null;
  toPair: number | null;
  suggestion: readonly number[] | null;
  entries: readonly NoteEntryView[];
  specimenVersionId: string;
  pack: Pack;
  /** Address of the page that shows the line with this note. */
  page: string;
  /** Where names are hidden, a student's own words go out without a time too. */
  hideStudent: boolean;
};

type Collection = { id: string; label: string; now: Date; notes: readonly OutgoingNote[] };

/**
 * Notes as an Annotation Collection with one page in it, by the Web Annotation Data Model (W3C Recommendation of
 * 23 February 2017). Our choices where the model leaves one:
 * - a note is one annotation with motivation `commenting`; its suggestion, if it has one, is a second body of purpose
 *   `editing` in JSON (offsets in 1/1000 em by pair, counted from 0); a reply is an annotation that replies to the
 *   note's;
 * - the target's source is the specimen version (urn:uuid); pair i is its text from the start of letter i to the end of
 *   letter i + 1, selected by position and, for readers who cannot count letters, by quotation as well; both in code
 *   points (4.2.4, 4.2.5); `scope` is the page that shows the note.
 */
export function webAnnotations({ id, label, now, notes }: Collection): object {
  const items = notes.flatMap(annotationsOf);
  const page = `${id}#page-1`;
  return {
    '@context': 'http://www.w3.org/ns/anno.jsonld',
    id,
    type: 'AnnotationCollection',
    label,
    total: items.length,
    generated: now.toISOString(),
    generator: { id: 'urn:kerncrit:software', type: 'Software', name: 'Kerncrit' },
    ...(items.length > 0
      ? { first: { id: page, type: 'AnnotationPage', partOf: id, startIndex: 0, items }, last: page }
      : {}),
  };
}

function annotationsOf(note: OutgoingNote): object[] {
  const iri = `urn:uuid:${note.id}`;
  const [first, ...answers] = currentThread(note.entries);
  return [
    {
      '@context': 'http://www.w3.org/ns/anno.jsonld',
      id: iri,
      type: 'Annotation',
      motivation: note.suggestion ? ['commenting', 'editing'] : 'commenting',
      ...(first ? madeBy(first.entry, note) : {}),
      body: bodiesOf(note, first?.entry.body ?? ''),
      target: targetOf(note),
    },
    ...answers.map(({ entry }) => ({
      '@context': 'http://www.w3.org/ns/anno.jsonld',
      id: `${iri}#answer-${entry.seq}`,
      type: 'Annotation',
      motivation: 'replying',
      ...madeBy(entry, note),
      body: { type: 'TextualBody', value: entry.body, format: 'text/plain', purpose: 'replying' },
      target: iri,
    })),
  ];
}

function bodiesOf({ suggestion, fromPair, toPair, pack }: OutgoingNote, text: string): object | object[] {
  const comment = { type: 'TextualBody', value: text, format: 'text/plain', purpose: 'commenting' };
  if (!suggestion) return comment;
  const first = runOf(fromPair, toPair, pack.letters.length - 1)?.first ?? 0;
  const value = JSON.stringify({
    unit: '1/1000 em',
    kind: 'offset',
    pairs: suggestion.map((offset, index) => ({ pair: first + index, offset })),
  });
  return [comment, { type: 'TextualBody', value, format: 'application/json', purpose: 'editing' }];
}

function targetOf({ specimenVersionId, fromPair, toPair, pack, page }: OutgoingNote): object {
  const run = runOf(fromPair, toPair, pack.letters.length - 1);
  const letters = letterPositions(pack);
  const text = [...pack.text];
  const start = run === null ? 0 : letters[run.first]!.start;
  const end = run === null ? text.length : letters[run.last + 1]!.end;
  return {
    type: 'SpecificResource',
    source: `urn:uuid:${specimenVersionId}`,
    scope: page,
    selector: [
      { type: 'TextPositionSelector', start, end },
      {
        type: 'TextQuoteSelector',
        exact: text.slice(start, end).join(''),
        prefix: text.slice(0, start).join(''),
        suffix: text.slice(end).join(''),
      },
    ],
  };
}

/** Names only where they were not hidden on the way here. */
function madeBy({ author, by, at }: NoteEntryView, { hideStudent }: OutgoingNote): object {
  const hidden = by === 'student' && hideStudent;
  return {
    ...(hidden ? {} : { created: at }),
    ...(author && !hidden ? { creator: { type: 'Person', name: author } } : {}),
  };
}

/**
 * The position of each letter of a line in its text, in Unicode code points from 0; `end` is behind it. Spaces between
 * words belong to no letter. A letter may be several code points (e with a combining accent).
 * @throws RangeError when the letters are not those of the text.
 */
export function letterPositions(pack: Pick<Pack, 'text' | 'letters' | 'glyphs'>): { start: number; end: number }[] {
  const text = [...pack.text];
  let at = 0;
  return pack.letters.map((glyph) => {
    const letter = [...pack.glyphs[glyph]!.cluster];
    while (at < text.length && /\s/u.test(text[at]!)) at++;
    const start = at;
    at += letter.length;
    if (text.slice(start, at).join('') !== letter.join(''))
      throw new RangeError(`“${letter.join('')}” is not the letter at ${start} of “${pack.text}”.`);
    return { start, end: at };
  });
}

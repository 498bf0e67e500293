import type { Metadata } from 'next';
import Link from 'next/link';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { EmptyState, Section } from '@/app/_ui/Page';
import { PlanPage } from '@/app/exercises/[exerciseId]/plan/plan-page';
import { findWords, type ShownLine } from '@/lib/exercise/find-words';
import { listFacesFor } from '@/lib/exercise/faces';
import { forPage } from '@/lib/http/page';
import { FREQUENCY, OBSCENE, wordLanguages } from '@/lib/word-finder/languages';
import { sizesText } from '@/shared/exercise/sizes';
import { counted } from '@/shared/text/number';
import { addFoundLineAction } from '../../actions';
import { SpecimenFigure } from '../specimen-figure';
import { type Asked, lessons, type ReadSearch, readSearch } from './read-search';
import { SearchForm } from './search-form';

export const metadata: Metadata = { title: 'Find words' };

type Props = { params: Promise<{ exerciseId: string }>; searchParams: Promise<Asked> };

/** Words for a lesson: what to look for, what was found in the face, and a button that makes it a line. */
export default async function FindWords({ params, searchParams }: Props) {
  const { exercise, faces } = await forPage(listFacesFor, await params);
  const asked = readSearch(await searchParams);
  const known = faces.some(({ choice }) => choice === asked.face);
  const search: ReadSearch = known ? asked : { ...asked, face: faces[0]!.choice };
  const wanted = search.examples.length + search.kinds.length > 0;
  return (
    <PlanPage
      wide
      exercise={exercise}
      title="Find words"
      lead="Name the pairs your lesson is about. You get words that hold them, drawn in the face they will be set in."
    >
      <Lessons />
      <SearchForm search={search} faces={faces} />
      {wanted && <Results exerciseId={exercise.id} search={search} />}
      <Sources />
    </PlanPage>
  );
}

function Lessons() {
  return (
    <nav aria-label="By lesson">
      <p className="plain">
        By lesson:{' '}
        {lessons.map(({ title, kinds, examples }, index) => (
          <span key={title}>
            {index > 0 && ', '}
            <Link
              href={`?${new URLSearchParams([...kinds.map((kind) => ['kinds', kind]), ['examples', examples]]).toString()}#found`}
            >
              {title}
            </Link>
          </span>
        ))}
      </p>
    </nav>
  );
}

async function Results({ exerciseId, search }: { exerciseId: string; search: ReadSearch }) {
  const found = await forPage(findWords, { exerciseId, ...search });
  if (found.lines.length === 0)
    return (
      <div id="found">
        <EmptyState title="No words found">
          Try other pairs, longer words, another way of writing, or another language.
          {found.lacking > 0 && ` ${counted(found.lacking, 'word')} need letters that this face does not have.`}
        </EmptyState>
      </div>
    );
  return (
    <Section
      id="found"
      title="Found"
      lead={`${counted(found.matching, 'word')} of ${found.looked} hold what you are looking for; here are the first ${found.lines.length}.${found.lacking > 0 ? ` ${counted(found.lacking, 'word')} need letters that this face does not have.` : ''}`}
    >
      <ol className="specimen-list found-lines" role="list">
        {found.lines.map((line) => (
          <li key={line.text}>
            <SpecimenFigure pack={line.pack} size={search.size} ground="light" caption={<LineWords line={line} />} />
            <Form action={addFoundLineAction} label={`Add “${line.text}”`}>
              <input type="hidden" name="exerciseId" value={exerciseId} />
              <input type="hidden" name="lines" value={line.text} />
              <input type="hidden" name="faces" value={search.face} />
              <input type="hidden" name="sizes" value={sizesText([search.size])} />
              <input type="hidden" name="grounds" value="light" />
              <div className="actions">
                <SubmitButton kind="usual" small pending="Adding…">
                  {line.there ? `Add “${line.text}” again` : `Add “${line.text}”`}
                </SubmitButton>
              </div>
            </Form>
          </li>
        ))}
      </ol>
    </Section>
  );
}

/** What makes a line a good one, in words; gaps in 1/1000 em. */
function LineWords({ line }: { line: ShownLine }) {
  const rounded = (value: number) => Math.round(value);
  return (
    <>
      “{line.text}”: {line.wanted.join(', ')}. Gaps differ by {rounded(line.asSet)}/1000 em as the face sets them, by{' '}
      {rounded(line.unkerned)} without kerning; built-in kerning by {rounded(line.builtIn)}.
      {line.common && ' A common word.'}
      {line.misread && ` May be read ${line.misread.includes(' as ') ? line.misread : `as “${line.misread}”`}.`}
      {line.there && ' A line of this exercise already.'}
    </>
  );
}

function Sources() {
  return (
    <p className="note-size quiet">
      Words are from open dictionaries:{' '}
      {wordLanguages.map(({ name, dictionary }) => `${name} (${dictionary.package}, ${dictionary.licence})`).join('; ')}
      . How common they are: {FREQUENCY.package}, {FREQUENCY.licence}. Obscene words are left out by {OBSCENE.package},{' '}
      {OBSCENE.licence}.
    </p>
  );
}

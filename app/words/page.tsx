import type { Metadata } from 'next';
import { Page, PageHeader, Section } from '../_ui/Page';
import { Spaced } from '../_ui/Spaced';
import { courseWords, lookingWords, numberWords, type GlossaryWord, whiteWords } from './glossary';
import { WordDrawing } from './word-drawing';

export const metadata: Metadata = { title: 'The words' };

/** The terms of the trade and of this product, for people who have never looked at white space. */
export default function Words() {
  return (
    <Page>
      <PageHeader
        title={<Spaced>The words</Spaced>}
        lead="What people who set type call the things you are about to see. Nothing here has to be learnt by heart."
      />
      <Section title="White" id="white">
        <WordList words={whiteWords} />
      </Section>
      <Section title="Numbers" id="numbers">
        <WordList words={numberWords} />
      </Section>
      <Section title="Ways of looking" id="looking">
        <WordList words={lookingWords} />
      </Section>
      <Section title="In a course" id="course">
        <WordList words={courseWords} />
      </Section>
    </Page>
  );
}

/** Terms with their explanation and, where one helps, a drawing. Each has an id for links. */
function WordList({ words }: { words: GlossaryWord[] }) {
  return (
    <dl className="word-list">
      {words.map((entry) => (
        <div key={entry.id} id={entry.id}>
          <dt>{entry.word}</dt>
          <dd>{entry.meaning}</dd>
          {entry.drawing && (
            <dd>
              <WordDrawing {...entry.drawing} />
            </dd>
          )}
        </div>
      ))}
    </dl>
  );
}

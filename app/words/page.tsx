import type { Metadata } from 'next';
import { Page } from '../_ui/Page';
import { PageHeader } from '../_ui/PageHeader';
import { Section } from '../_ui/Section';
import { Spaced } from '../_ui/Spaced';
import { courseTerms, lookingTerms, numberTerms, whiteTerms } from './terms';
import { TermList } from './term-list';

export const metadata: Metadata = { title: 'The words' };

/** The words of the trade and of this place, for people who have never looked at white space. */
export default function Words() {
  return (
    <Page>
      <PageHeader
        title={<Spaced>The words</Spaced>}
        lead="What people who set type call the things you are about to see. Nothing here has to be learnt by heart."
      />
      <Section title="White" id="white">
        <TermList terms={whiteTerms} />
      </Section>
      <Section title="Numbers" id="numbers">
        <TermList terms={numberTerms} />
      </Section>
      <Section title="Ways of looking" id="looking">
        <TermList terms={lookingTerms} />
      </Section>
      <Section title="In a course" id="course">
        <TermList terms={courseTerms} />
      </Section>
    </Page>
  );
}

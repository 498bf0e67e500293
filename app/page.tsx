import Link from 'next/link';
import { getSelf } from '@/lib/account/account';
import { forPage } from '@/lib/http/page';
import { LineToTry, ProofSheet } from './proof-sheet';
import { ButtonLink } from './_ui/Button';
import { Page, PageHeader, Section } from './_ui/Page';
import { Spaced } from './_ui/Spaced';

/** The first page: what this is, for people who are not signed in yet; for those who are, the way to their courses. */
export default async function Home() {
  const self = await forPage(getSelf);
  return (
    <Page width="wide">
      <PageHeader
        title={<Spaced>Spacing display type by eye</Spaced>}
        lead="In large type the eye meets the white between the letters first: even it out here, gap by gap."
        actions={
          self ? (
            <ButtonLink kind="main" href="/courses">
              To your courses
            </ButtonLink>
          ) : (
            <ButtonLink kind="main" href="/sign-in">
              Sign in
            </ButtonLink>
          )
        }
      />
      <LineToTry />
      <FirstSteps />
      <Section title="What a class sees">
        <ProofSheet />
      </Section>
      <Places />
    </Page>
  );
}

/** What happens in a course, in the order in which it happens. */
function FirstSteps() {
  return (
    <Section title="How a round goes">
      <ol className="reading">
        <li>
          The instructor posts an exercise: a few lines of type, each in a face, at a size, on a light or a dark ground.
        </li>
        <li>Students space each line on the bench, by pointer, touch or keyboard. Every change is saved.</li>
        <li>
          They send a proof with a sentence of reasoning. Its white is measured and compared with the instructor’s
          references, if there are any.
        </li>
        <li>Assistants look at the line first, then at the figures, and pin notes to single gaps.</li>
        <li>Notes and marks go out together. The next round begins where the last one ended.</li>
      </ol>
      <p>
        Measurements inform; people judge. Two spacings of one line can both be right, and no measurement awards a mark.
      </p>
    </Section>
  );
}

/** Where a visitor may go without an account. */
function Places() {
  return (
    <Section title="Open to everyone">
      <dl className="places">
        <div>
          <dt>
            <Link href="/words">The words</Link>
          </dt>
          <dd>What the trade calls things, each with a drawing: gap, counter, offset, tracking.</dd>
        </div>
        <div>
          <dt>
            <Link href="/faces">Faces and licences</Link>
          </dt>
          <dd>The open-licence faces that come with it, shown, with the licence of each.</dd>
        </div>
        <div>
          <dt>
            <Link href="/records">Records and privacy</Link>
          </dt>
          <dd>What is kept about people, for how long, and who sees it.</dd>
        </div>
        <div>
          <dt>
            <Link href="/accessibility">Accessibility</Link>
          </dt>
          <dd>What works by keyboard, by ear and enlarged, and whom to ask.</dd>
        </div>
      </dl>
      <p>
        No account yet? Your instructor has a join link for the course. A school’s first instructor gets a link from the
        person who runs the server.
      </p>
    </Section>
  );
}

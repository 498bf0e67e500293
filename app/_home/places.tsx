import Link from 'next/link';
import { Section } from '../_ui/Section';

/** Where a visitor may go without an account. */
export function Places() {
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
        No account yet? Your instructor has a join link for the course. The first instructor of a school gets a link
        from whoever runs the server.
      </p>
    </Section>
  );
}

import type { Metadata } from 'next';
import { Notice, Page, PageHeader, Section } from '../_ui/Page';
import { Spaced } from '../_ui/Spaced';

export const metadata: Metadata = { title: 'Records and privacy' };

/** What is stored about people, and the cautions that go with it. */
export default function Records() {
  return (
    <Page>
      <PageHeader
        title={<Spaced>Records and privacy</Spaced>}
        lead="Student work and marks are education records. This page says what the program keeps; your school’s policy and the law of your country say what it may."
      />
      <Notice kind="caution" title="For the person who runs this server">
        Complete this page before real students are added: who is responsible, on what legal ground, how long records
        are kept, and whom to ask. If you are unsure what applies, ask the person in your school who answers for
        records.
      </Notice>
      <Section title="What is kept">
        <dl className="facts">
          <dt>About you</dt>
          <dd>
            your name, your e-mail address, a one-way hash of your password, the courses you are in and your part in
            them, and when you were last signed in
          </dd>
          <dt>Your work</dt>
          <dd>
            every change you make to a line, the proofs you send with their reasoning, and the server’s time of receipt
          </dd>
          <dt>Critique</dt>
          <dd>notes, answers and marks, who gave them, and every change to a mark with its reason</dd>
          <dt>Accommodations</dt>
          <dd>what was set for you, without a reason</dd>
          <dt>A log</dt>
          <dd>who did what in a course and when, for the instructor</dd>
        </dl>
        <p>
          No page asks another server for anything: no pictures, no type, no statistics. One cookie keeps you signed in;
          there is no other.
        </p>
      </Section>
      <Section title="Who sees it">
        <ul>
          <li>You see your own work, and notes and marks once they are released.</li>
          <li>
            Instructors and assistants of a course see the work sent in that course. Names can be hidden from markers
            while they mark.
          </li>
          <li>
            Other students see nothing of yours. On the wall a line may be shown without its name, when the instructor
            chooses it.
          </li>
          <li>The person who runs the server can read its database and its backups.</li>
        </ul>
      </Section>
      <Section title="How long">
        <p>
          Each course can have a last day of retention, which its instructor sets as your school has decided. Nothing is
          deleted by itself on that day: afterwards an instructor ends retention, and the course no longer names its
          students. You can erase your own account at any time. That clears your name, your address and everything you
          wrote; spacings and marks stay without a name, so that the figures of a class remain whole. Backups hold their
          copies until they are deleted themselves.
        </p>
      </Section>
      <Section title="What measurements say, and do not">
        <p>
          The program measures white. It does not grade: a mark is given by a person, and where arithmetic proposes one
          it says so and shows how. If two spacings are identical, instructors see that as a fact; it has many innocent
          reasons and proves nothing.
        </p>
      </Section>
    </Page>
  );
}

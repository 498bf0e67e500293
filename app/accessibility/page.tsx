import type { Metadata } from 'next';
import { Notice, Page, PageHeader, Section } from '../_ui/Page';
import { Spaced } from '../_ui/Spaced';

export const metadata: Metadata = { title: 'Accessibility' };

/** A statement for the school that runs this server to adapt. */
export default function Accessibility() {
  return (
    <Page>
      <PageHeader
        title={<Spaced>Accessibility</Spaced>}
        lead="Spacing type is looked at, and yet the whole of the work here can be done by keyboard, enlarged, and with gaps spoken."
      />
      <Notice title="For the person who runs this server">
        This is a statement to be completed: who is responsible, how to reach them, how soon they answer, when and how
        it was tested here, and which law it answers to. Until that is done it describes the program and not your
        school.
      </Notice>
      <Section title="What is built in">
        <ul>
          <li>
            Everything works with the keyboard alone. On the bench the keys that choose a gap and the keys that change
            it are different ones, and single-key shortcuts can be switched off.
          </li>
          <li>
            Each gap on the bench is a slider with a value that is spoken in words. Where the exercise or an
            accommodation allows it, how open the gap looks is spoken as well.
          </li>
          <li>
            Pages can be enlarged to four times their size and fit a width of 320 px without sideways scrolling, except
            tables and lines of type, which scroll by themselves.
          </li>
          <li>
            Nothing depends on colour alone: too tight and too wide have their own forms and words, hatch and dots their
            own texture.
          </li>
          <li>
            Light and dark follow your system, as do high contrast and less motion. The sheet under a line keeps its own
            ground, because the ground is part of the task.
          </li>
          <li>Nothing flickers faster than three times a second, and nothing moves by itself.</li>
          <li>
            No time limit runs on any page. Deadlines belong to the course, and your instructor can give you more time.
          </li>
        </ul>
      </Section>
      <Section title="What your instructor can set for you">
        <ul>
          <li>more time for every round,</li>
          <li>a larger working view on the bench,</li>
          <li>what the bench tells while you work,</li>
          <li>gaps that are spoken.</li>
        </ul>
        <p>Ask for it; the reason is not written down here.</p>
      </Section>
      <Section title="What is not accessible yet">
        <ul>
          <li>
            The evenness of a line is in the end a visual judgement. Spoken figures tell how open a gap is; they do not
            replace looking, and an exercise that is marked by ear alone needs its own agreement with your instructor.
          </li>
          <li>A line at its true size may be wider than a small screen. It scrolls sideways within its sheet.</li>
          <li>
            Pages have been checked with an automatic checker and by keyboard. They have not been tested by people who
            use a screen reader every day.
          </li>
        </ul>
      </Section>
      <Section title="If something is in your way">
        <p>
          Tell your instructor first; they can often change it for you at once. The school names here whom else to write
          to, and the body to turn to if it does not answer.
        </p>
      </Section>
    </Page>
  );
}

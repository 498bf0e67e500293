import { Section } from '../_ui/Section';

/** What happens in a course, in the order in which it happens. */
export function FirstSteps() {
  return (
    <Section title="How a round goes">
      <ol className="reading">
        <li>
          The instructor posts an exercise: a few lines of type, each in a face, at a size, on a light or a dark ground.
        </li>
        <li>Students space each line on the bench, by hand or by keyboard. Every change is kept.</li>
        <li>
          They send a proof with a sentence of reasoning. The white in it is measured, and laid beside the instructor’s
          own settings where there are any.
        </li>
        <li>Assistants look at the line first, then at the figures, and pin notes to single gaps.</li>
        <li>Notes and marks go out together. The next round begins where the last one ended.</li>
      </ol>
      <p>
        Figures inform and people judge: two settings of one line can both be right, and no mark is given by a number.
      </p>
    </Section>
  );
}

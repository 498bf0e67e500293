import type { Metadata } from 'next';
import { ButtonLink } from '@/app/_ui/Button';
import { Field } from '@/app/_ui/Field';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Notice, Section } from '@/app/_ui/Page';
import { RadioGroup } from '@/app/_ui/Select';
import { When } from '@/app/_ui/Status';
import { getRound } from '@/lib/exercise/rounds';
import { forPage } from '@/lib/http/page';
import {
  changeRoundAction,
  endExtensionAction,
  removeRoundAction,
  setSecondMarkingAction,
} from '@/app/exercises/[exerciseId]/plan/actions';
import { PlanPage } from '@/app/exercises/[exerciseId]/plan/plan-page';
import { SavedNow } from '../../saved-now';
import { secondMarkerChoices } from '../../setting-words';
import { RoundFields } from '../round-fields';
import { SectionsPart } from './sections-part';

type Props = { params: Promise<{ exerciseId: string; roundId: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { round } = await forPage(getRound, { roundId: (await params).roundId });
  return { title: `Round ${round.number}` };
}

/** Dates and late rule of a round, and the students with more time. */
export default async function Round({ params }: Props) {
  const { roundId } = await params;
  const { round, exercise, timeZone, isLast, extensions, students, sections } = await forPage(getRound, { roundId });
  const someDue = round.dueAt !== null || round.sections.some(({ dueAt }) => dueAt !== null);
  const here = `/exercises/${exercise.id}/plan/rounds/${roundId}`;
  return (
    <PlanPage exercise={exercise} title={`Round ${round.number}${round.title ? `: ${round.title}` : ''}`}>
      {round.state === 'released' ? (
        <Notice>This round has been released, so its dates are fixed. Add another round for more work.</Notice>
      ) : (
        <Form action={changeRoundAction} label="Round">
          <SavedNow
            saved={[
              { name: 'title', label: 'Name', value: round.title },
              { name: 'opensLocal', label: 'Opens', value: round.opensLocal ?? '' },
              { name: 'dueLocal', label: 'Due', value: round.dueLocal ?? '' },
            ]}
          />
          <input type="hidden" name="roundId" value={round.id} />
          <input type="hidden" name="version" value={round.version} />
          <RoundFields round={round} timeZone={timeZone} />
          <div className="actions">
            <SubmitButton pending="Saving…">Save the round</SubmitButton>
          </div>
        </Form>
      )}
      <SectionsPart round={round} sections={sections} here={here} timeZone={timeZone} />
      <Section
        id="second-marking"
        title="Second marker"
        lead="A second marker judges the same proofs without seeing the first one’s marks and notes. Where they differ, an instructor settles it with a reason before the release."
      >
        <Form action={setSecondMarkingAction} label="Second marker">
          <input type="hidden" name="roundId" value={round.id} />
          <input type="hidden" name="version" value={round.version} />
          <RadioGroup
            name="which"
            label="A second marker looks at"
            choices={secondMarkerChoices}
            defaultValue={round.secondMarking.which}
          />
          <Field
            name="percent"
            label="Share, in percent"
            short
            inputMode="numeric"
            defaultValue={String(round.secondMarking.percent)}
            hint="Only where a share is chosen."
          />
          <div className="actions">
            <SubmitButton kind="usual" pending="Saving…">
              Save the second marker
            </SubmitButton>
            <ButtonLink href={`/exercises/${exercise.id}/rounds/${round.number}/agreement`}>
              Agreement of the two
            </ButtonLink>
          </div>
        </Form>
      </Section>
      <Section
        title="More time for a student"
        lead={
          extensions.length === 0
            ? 'No student has their own due date. Accommodations that give more time apply automatically.'
            : undefined
        }
        actions={
          someDue && students > 0 ? (
            <ButtonLink href={`${here}/more-time`}>Give a student more time</ButtonLink>
          ) : undefined
        }
      >
        {!someDue && <p className="quiet">The round has no due date, so no one needs more time.</p>}
        {someDue && students === 0 && <p className="quiet">No student has joined the course yet.</p>}
        {extensions.length > 0 && (
          <ul className="card-list">
            {extensions.map((extension) => (
              <li key={extension.id}>
                <p>
                  {extension.name}: until <When at={extension.dueAt} timeZone={timeZone} />
                </p>
                <Form action={endExtensionAction} label={`Own due date of ${extension.name}`}>
                  <input type="hidden" name="extensionId" value={extension.id} />
                  <div className="actions">
                    <SubmitButton kind="usual" small>
                      Withdraw
                    </SubmitButton>
                  </div>
                </Form>
              </li>
            ))}
          </ul>
        )}
      </Section>
      {isLast && round.proofs === 0 && (
        <Section title="Delete this round" lead="No proofs have been sent to it, so only its dates are lost.">
          <Form action={removeRoundAction} label="Delete this round">
            <input type="hidden" name="roundId" value={round.id} />
            <input type="hidden" name="version" value={round.version} />
            <div className="actions">
              <SubmitButton kind="grave">Delete round {round.number}</SubmitButton>
            </div>
          </Form>
        </Section>
      )}
    </PlanPage>
  );
}

import type { Metadata } from 'next';
import { Checkbox, Field, TextArea } from '@/app/_ui/Field';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { RadioGroup } from '@/app/_ui/Select';
import { getPlan } from '@/lib/exercise/plan';
import { forPage } from '@/lib/http/page';
import { sizesText } from '@/shared/exercise/sizes';
import { changeExerciseAction } from '../actions';
import { PlanPage } from '../plan-page';
import { SavedNow } from '../saved-now';
import { shownChoices, tellingChoices } from '../setting-words';

export const metadata: Metadata = { title: 'Brief and options' };

/** Title, brief, and the settings of the whole exercise. */
export default async function Brief({ params }: { params: Promise<{ exerciseId: string }> }) {
  const { exercise } = await forPage(getPlan, await params);
  const { settings } = exercise;
  return (
    <PlanPage
      exercise={exercise}
      title="Brief and options"
      lead={exercise.state === 'draft' ? undefined : 'Students see a change as soon as it is saved.'}
    >
      <Form action={changeExerciseAction} label="Brief and options">
        <SavedNow
          saved={[
            { name: 'title', label: 'Title', value: exercise.title },
            { name: 'brief', label: 'Brief', value: exercise.brief },
          ]}
        />
        <input type="hidden" name="exerciseId" value={exercise.id} />
        <input type="hidden" name="version" value={exercise.version} />
        <Field name="title" label="Title" defaultValue={exercise.title} maxLength={120} />
        <TextArea
          name="brief"
          label="Brief"
          optional
          rows={10}
          defaultValue={exercise.brief}
          hint="An empty line begins a paragraph."
        />
        <RadioGroup
          name="settings.benchTells"
          label="What the bench tells before a proof is sent"
          choices={tellingChoices}
          defaultValue={settings.benchTells}
        />
        <RadioGroup
          name="settings.benchTellsAfterProof"
          label="What it tells once a proof of the round has been sent"
          choices={tellingChoices}
          defaultValue={settings.benchTellsAfterProof}
          hint="A student’s own accommodation overrides both."
        />
        <RadioGroup
          name="settings.referencesShown"
          label="When students may see the references"
          choices={shownChoices}
          defaultValue={settings.referencesShown}
        />
        <Field
          name="settings.tolerance"
          label="Tolerance where a reference gives none"
          short
          inputMode="numeric"
          defaultValue={String(settings.tolerance)}
          hint="In 1/1000 em, to either side. If you set a line twice, the difference between your two spacings is used instead."
        />
        <Field
          name="settings.smallestSize"
          label="Smallest size of use"
          optional
          short
          defaultValue={settings.smallestSize ? sizesText([settings.smallestSize]) : ''}
          hint="Such as 14 px or 9 pt. The bench shows each line down to it, and says what fills in there: crowding costs legibility first at the smallest size in use."
        />
        <Checkbox
          name="settings.namesHidden"
          label="Hide names while marking"
          defaultChecked={settings.namesHidden}
          hint="Markers see an alias in place of each student’s name until everything sent has been released. Showing names earlier is logged."
        />
        <Checkbox
          name="settings.safetySigns"
          label="Lines like these appear on traffic, exit, safety or accessibility signs"
          defaultChecked={settings.safetySigns}
          hint="Then the exercise says that such signs follow codes and standards and not the eye."
        />
        <div className="actions">
          <SubmitButton pending="Saving…">Save</SubmitButton>
        </div>
      </Form>
    </PlanPage>
  );
}

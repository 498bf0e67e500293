import type { Metadata } from 'next';
import { Checkbox } from '@/app/_ui/Checkbox';
import { Form } from '@/app/_ui/Form';
import { SubmitButton } from '@/app/_ui/SubmitButton';
import { listFacesFor } from '@/lib/exercise/list-faces';
import { forPage } from '@/lib/http/page';
import { mostAtOnce } from '@/shared/schemas/specimen';
import { addSpecimensAction } from '../../actions';
import { PlanPage } from '../../plan-page';
import { FaceList } from '../face-list';
import { HowMany } from '../how-many';
import { Field } from '@/app/_ui/Field';
import { TextArea } from '@/app/_ui/TextArea';

export const metadata: Metadata = { title: 'Add specimens' };

/** Many specimens at once: every line in every face, at every size, on every ground. */
export default async function NewSpecimens({ params }: { params: Promise<{ exerciseId: string }> }) {
  const { exercise, faces } = await forPage(listFacesFor, await params);
  return (
    <PlanPage
      wide
      exercise={exercise}
      title="Add specimens"
      lead="Every line is set in every face you tick, at every size and on every ground. Ones you don’t want can be taken out afterwards."
    >
      <Form action={addSpecimensAction} label="Add specimens">
        <input type="hidden" name="exerciseId" value={exercise.id} />
        <TextArea
          name="lines"
          label="Lines"
          rows={5}
          hint="One line of text a row, at least two letters each."
          spellCheck={false}
        />
        <FaceList faces={faces} />
        <Field
          name="sizes"
          label="Sizes"
          hint="For example: 72 px, 24 pt. Pixels for screens, points for paper; the bench shows them at their true size."
          spellCheck={false}
        />
        <fieldset className="field" id="field-grounds">
          <legend>Ground</legend>
          <div className="choices-row">
            <Checkbox name="grounds" value="light" label="Light ground, dark letters" defaultChecked />
            <Checkbox name="grounds" value="dark" label="Dark ground, light letters" />
          </div>
        </fieldset>
        <HowMany most={mostAtOnce} />
        <div className="actions">
          <SubmitButton pending="Setting the lines…">Make the specimens</SubmitButton>
        </div>
      </Form>
    </PlanPage>
  );
}

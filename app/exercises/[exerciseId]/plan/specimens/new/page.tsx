import type { Metadata } from 'next';
import { Checkbox, Field, TextArea } from '@/app/_ui/Field';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { addSpecimensAction } from '@/app/exercises/[exerciseId]/plan/actions';
import { PlanPage } from '@/app/exercises/[exerciseId]/plan/plan-page';
import { type FaceChoice, listFacesFor } from '@/lib/exercise/faces';
import { forPage } from '@/lib/http/page';
import { mostAtOnce } from '@/shared/schemas/specimen';
import { HowMany } from '../how-many';

export const metadata: Metadata = { title: 'Add lines' };

/** Many lines at once: every text in every face, at every size, on every ground. */
export default async function NewSpecimens({ params }: { params: Promise<{ exerciseId: string }> }) {
  const { exercise, faces } = await forPage(listFacesFor, await params);
  return (
    <PlanPage
      wide
      exercise={exercise}
      title="Add lines"
      lead="Every line is set in every face you tick, at every size and on every ground. You can remove any you don’t want afterwards."
    >
      <Form action={addSpecimensAction} label="Add lines">
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
          <SubmitButton pending="Preparing the lines…">Add the lines</SubmitButton>
        </div>
      </Form>
    </PlanPage>
  );
}

/** Faces to tick, family by family from light to heavy, grouped by kind of design. */
function FaceList({ faces }: { faces: FaceChoice[] }) {
  const families = [...new Set(faces.map(({ family }) => family))];
  return (
    <fieldset className="field" id="field-faces">
      <legend>Faces</legend>
      <p className="hint">
        A variable face with an optical size is set at the size you give, as a browser does. Licences are listed on{' '}
        <a href="/faces">Faces and licences</a>.
      </p>
      <div className="face-list" role="group">
        {families.map((family) => {
          const own = faces.filter((face) => face.family === family);
          return (
            <details key={family} className="face-family">
              <summary>
                {family}{' '}
                <span className="quiet note-size">
                  {own[0]!.design}, {own.length === 1 ? 'one style' : `${own.length} styles`}
                </span>
              </summary>
              <div className="choices-row">
                {own.map((face) => (
                  <Checkbox key={face.choice} name="faces" value={face.choice} label={`${face.style}`} />
                ))}
              </div>
            </details>
          );
        })}
      </div>
    </fieldset>
  );
}

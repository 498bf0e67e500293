import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { AppError } from '@/lib/access/errors';
import { ButtonLink } from '@/app/_ui/Button';
import { Form } from '@/app/_ui/Form';
import { Notice } from '@/app/_ui/Notice';
import { Section } from '@/app/_ui/Section';
import { SubmitButton } from '@/app/_ui/SubmitButton';
import { previewSpecimenChange } from '@/lib/exercise/preview-specimen-change';
import { standAtExercise } from '@/lib/exercise/stand-at-exercise';
import { forPage } from '@/lib/http/page';
import { changeSpecimenAction } from '../../../actions';
import { PlanPage } from '../../../plan-page';
import { specimen as readSpecimen } from '../../../read-forms';
import { SpecimenFigure } from '../../specimen-figure';
import { changeWords } from './change-words';

export const metadata: Metadata = { title: 'What this change does' };

type Props = {
  params: Promise<{ exerciseId: string; specimenId: string }>;
  searchParams: Promise<Record<string, string | undefined>>;
};

/** What a change of a specimen will do, and the button that does it. */
export default async function Change({ params, searchParams }: Props) {
  const { exerciseId, specimenId } = await params;
  const asked = await searchParams;
  const typed = {
    text: asked.text ?? '',
    face: asked.face ?? '',
    size: asked.size ?? '',
    ground: asked.ground ?? '',
    remark: asked.remark ?? '',
  };
  const form = new FormData();
  for (const [name, value] of Object.entries({ ...typed, specimenId })) form.set(name, value);
  const { title } = await forPage(standAtExercise, { exerciseId });
  const preview = await forPage(previewSpecimenChange, readOrNothing(form));
  const back = `/exercises/${exerciseId}/plan/specimens/${specimenId}?${new URLSearchParams(typed).toString()}`;
  return (
    <PlanPage wide exercise={{ id: exerciseId, title }} title="What this change does">
      <SpecimenFigure {...preview} />
      {preview.same ? (
        <Notice>This is what the specimen is already; there is nothing to change.</Notice>
      ) : (
        <Section title={`It becomes version ${preview.number + 1}`}>
          <ul>
            {changeWords(preview).map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </Section>
      )}
      {preview.same ? (
        <div className="actions">
          <ButtonLink href={back}>Back to the specimen</ButtonLink>
        </div>
      ) : (
        <Form action={changeSpecimenAction} label="Make the change">
          <input type="hidden" name="specimenId" value={specimenId} />
          <input type="hidden" name="number" value={asked.number ?? String(preview.number)} />
          {Object.entries(typed).map(([name, value]) => (
            <input key={name} type="hidden" name={name} value={value} />
          ))}
          <div className="actions">
            <SubmitButton pending="Changing…">Change the specimen</SubmitButton>
            <ButtonLink href={back}>Back to what I typed</ButtonLink>
          </div>
        </Form>
      )}
    </PlanPage>
  );
}

/** The form checked it before it led here; an address that somebody made by hand leads nowhere. */
function readOrNothing(form: FormData) {
  try {
    return readSpecimen(form);
  } catch (error) {
    if (error instanceof AppError) notFound();
    throw error;
  }
}

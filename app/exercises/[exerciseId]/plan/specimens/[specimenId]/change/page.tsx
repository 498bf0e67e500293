import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/_ui/Button';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Notice, Section } from '@/app/_ui/Page';
import { changeSpecimenAction } from '@/app/exercises/[exerciseId]/plan/actions';
import { PlanPage } from '@/app/exercises/[exerciseId]/plan/plan-page';
import { specimen as readSpecimen } from '@/app/exercises/[exerciseId]/plan/read-forms';
import { SpecimenFigure } from '@/app/exercises/[exerciseId]/plan/specimens/specimen-figure';
import { AppError } from '@/lib/access/errors';
import { previewSpecimenChange } from '@/lib/exercise/change-specimen';
import { getExerciseRole } from '@/lib/exercise/exercises';
import { forPage } from '@/lib/http/page';
import { counted } from '@/shared/text/number';

export const metadata: Metadata = { title: 'What this change does' };

type Props = {
  params: Promise<{ exerciseId: string; specimenId: string }>;
  searchParams: Promise<Record<string, string | undefined>>;
};

/** The effect of changing a line, and the button that changes it. */
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
  const { title } = await forPage(getExerciseRole, { exerciseId });
  const preview = await forPage(previewSpecimenChange, readOrNothing(form));
  const back = `/exercises/${exerciseId}/plan/specimens/${specimenId}?${new URLSearchParams(typed).toString()}`;
  return (
    <PlanPage wide exercise={{ id: exerciseId, title }} title="What this change does">
      <SpecimenFigure {...preview} />
      {preview.same ? (
        <Notice>The line already is like this; there is nothing to change.</Notice>
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
          <ButtonLink href={back}>Back to the line</ButtonLink>
        </div>
      ) : (
        <Form action={changeSpecimenAction} label="Make the change">
          <input type="hidden" name="specimenId" value={specimenId} />
          <input type="hidden" name="number" value={asked.number ?? String(preview.number)} />
          {Object.entries(typed).map(([name, value]) => (
            <input key={name} type="hidden" name={name} value={value} />
          ))}
          <div className="actions">
            <SubmitButton pending="Changing…">Change the line</SubmitButton>
            <ButtonLink href={back}>Back to what I typed</ButtonLink>
          </div>
        </Form>
      )}
    </PlanPage>
  );
}

/** The form checks it before it leads here; an address typed by hand may not pass. */
function readOrNothing(form: FormData) {
  try {
    return readSpecimen(form);
  } catch (error) {
    if (error instanceof AppError) notFound();
    throw error;
  }
}

type Preview = {
  kept: number;
  lost: string[];
  fresh: number;
  drafts: number;
  proofs: number;
  references: number;
  number: number;
};

/** The effect, one sentence each: pairs, drafts, references, proofs. */
function changeWords({ kept, lost, fresh, drafts, proofs, references, number }: Preview): string[] {
  return [
    pairWords(kept, lost, fresh),
    drafts === 0
      ? 'No student has a draft of it yet.'
      : `${counted(drafts, 'draft')} ${drafts === 1 ? 'moves' : 'move'} to the new version at once: what students set at pairs that stay is kept, new pairs begin untouched. Values at pairs that go are kept in each draft’s history.`,
    references === 0
      ? 'It has no reference.'
      : `${counted(references, 'reference')} ${references === 1 ? 'is' : 'are'} copied to the new version in the same way${fresh + lost.length === 0 ? '' : ', as a start that its author should look at again'}.`,
    proofs === 0
      ? 'No proof holds it yet.'
      : `${counted(proofs, 'proof')} that ${proofs === 1 ? 'was' : 'were'} sent on version ${number} ${proofs === 1 ? 'stays' : 'stay'} on it, with ${proofs === 1 ? 'its' : 'their'} measures, notes and marks.`,
  ];
}

function pairWords(kept: number, lost: string[], fresh: number): string {
  if (lost.length === 0 && fresh === 0) return `All ${counted(kept, 'pair')} stay as they are.`;
  const gone =
    lost.length === 0
      ? 'none goes'
      : `${counted(lost.length, 'pair')} ${lost.length === 1 ? 'goes' : 'go'} (${lost.slice(0, 12).join(', ')}${lost.length > 12 ? ', …' : ''})`;
  return `${counted(kept, 'pair')} ${kept === 1 ? 'stays' : 'stay'}, ${gone}, ${fresh === 0 ? 'none is new' : `${counted(fresh, 'pair')} ${fresh === 1 ? 'is' : 'are'} new`}.`;
}

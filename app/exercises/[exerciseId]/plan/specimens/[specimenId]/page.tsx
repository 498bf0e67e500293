import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { Field, TextArea } from '@/app/_ui/Field';
import { RadioGroup, Select } from '@/app/_ui/Select';
import { Section } from '@/app/_ui/Page';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { getPlan } from '@/lib/exercise/plan';
import { listFacesFor } from '@/lib/exercise/faces';
import { forPage } from '@/lib/http/page';
import { lineWords } from '@/shared/line/line-words';
import { sizesText } from '@/shared/exercise/sizes';
import {
  previewChangeAction,
  moveSpecimenAction,
  retireSpecimenAction,
} from '@/app/exercises/[exerciseId]/plan/actions';
import { PlanPage } from '@/app/exercises/[exerciseId]/plan/plan-page';
import { SpecimenFigure } from '../specimen-figure';
import { StartPart } from './start-part';

type Props = {
  params: Promise<{ exerciseId: string; specimenId: string }>;
  searchParams: Promise<Record<string, string | undefined>>;
};

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { exerciseId, specimenId } = await params;
  const { specimens } = await forPage(getPlan, { exerciseId });
  const specimen = specimens.find(({ id }) => id === specimenId);
  return { title: specimen ? `“${specimen.text}”, ${lineWords(specimen)}` : 'Line' };
}

/** One line: what it is, changing it (after a preview of the effect), moving it, and removing it. */
export default async function Specimen({ params, searchParams }: Props) {
  const { exerciseId, specimenId } = await params;
  const typed = await searchParams;
  const [{ exercise, specimens }, { faces }] = await Promise.all([
    forPage(getPlan, { exerciseId }),
    forPage(listFacesFor, { exerciseId }),
  ]);
  const at = specimens.findIndex(({ id }) => id === specimenId);
  const specimen = specimens[at];
  if (!specimen) notFound();
  const choices = faces.map(({ choice, family, style }) => ({
    value: choice,
    label: `${family} ${style}`,
    group: family,
  }));
  return (
    <PlanPage
      wide
      exercise={exercise}
      title={`Line ${at + 1} of ${specimens.length}`}
      lead={specimen.number > 1 ? `Version ${specimen.number}.` : undefined}
    >
      <SpecimenFigure {...specimen} />
      {specimen.details.remark && <p>Remark: {specimen.details.remark}</p>}
      <Section title="Change it" lead="You first see what the change does; nothing happens before you say so there.">
        <Form action={previewChangeAction} label="Change the line">
          <input type="hidden" name="exerciseId" value={exerciseId} />
          <input type="hidden" name="specimenId" value={specimen.id} />
          <input type="hidden" name="number" value={specimen.number} />
          <Field
            name="text"
            label="Text"
            defaultValue={typed.text ?? specimen.text}
            spellCheck={false}
            maxLength={200}
          />
          <Select name="face" label="Face" choices={choices} defaultValue={typed.face ?? specimen.face ?? undefined} />
          <Field
            name="size"
            label="Size"
            short
            defaultValue={typed.size ?? sizesText([specimen.size])}
            hint="For example 72 px or 24 pt."
          />
          <RadioGroup
            name="ground"
            label="Ground"
            row
            choices={[
              { value: 'light', label: 'Light ground, dark letters' },
              { value: 'dark', label: 'Dark ground, light letters' },
            ]}
            defaultValue={typed.ground ?? specimen.ground}
          />
          <TextArea
            name="remark"
            label="Remark for the student"
            optional
            rows={2}
            defaultValue={typed.remark ?? specimen.details.remark}
            hint="For example what the line is for."
          />
          <div className="actions">
            <SubmitButton pending="Preparing the line…">Preview this change</SubmitButton>
          </div>
        </Form>
      </Section>
      <StartPart exerciseId={exerciseId} specimen={specimen} />
      <Section title="Its place">
        <div className="actions">
          {at > 0 && <Move specimenId={specimen.id} to="earlier" label="One place earlier" />}
          {at < specimens.length - 1 && <Move specimenId={specimen.id} to="later" label="One place later" />}
          {specimens.length === 1 && <p className="quiet">It is the only one.</p>}
        </div>
      </Section>
      <Section
        title="Remove this line"
        lead={
          exercise.state === 'draft'
            ? 'You can restore it from the plan.'
            : 'Students are no longer asked for it. Drafts and proofs that contain it stay, and you can restore it from the plan.'
        }
      >
        <Form action={retireSpecimenAction} label="Remove this line">
          <input type="hidden" name="specimenId" value={specimen.id} />
          <div className="actions">
            <SubmitButton kind="grave">Remove “{specimen.text}”</SubmitButton>
          </div>
        </Form>
      </Section>
    </PlanPage>
  );
}

function Move({ specimenId, to, label }: { specimenId: string; to: 'earlier' | 'later'; label: string }) {
  return (
    <Form action={moveSpecimenAction} label={label} inline>
      <input type="hidden" name="specimenId" value={specimenId} />
      <input type="hidden" name="to" value={to} />
      <SubmitButton kind="usual">{label}</SubmitButton>
    </Form>
  );
}

import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/_ui/Button';
import { Checkbox } from '@/app/_ui/Field';
import { EmptyState, Page, PageHeader } from '@/app/_ui/Page';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { forPage } from '@/lib/http/page';
import { listReferences } from '@/lib/reference/references';
import { SpecimenFigure } from '@/app/exercises/[exerciseId]/plan/specimens/specimen-figure';
import { lineWords } from '@/shared/line/line-words';
import { carryReferenceAction } from '../actions';

export const metadata: Metadata = { title: 'Carry a reference' };

type Props = { params: Promise<{ exerciseId: string }>; searchParams: Promise<{ reference?: string }> };

/** A reference copied to other sizes and weights of the same words, as a start. */
export default async function Carry({ params, searchParams }: Props) {
  const { exerciseId } = await params;
  const { reference: referenceId } = await searchParams;
  const { exercise, specimens } = await forPage(listReferences, { exerciseId });
  const from = specimens.find(({ references }) => references.some(({ id }) => id === referenceId));
  const reference = from?.references.find(({ id }) => id === referenceId);
  if (!from || !reference) notFound();
  const others = specimens.filter(({ id, text }) => id !== from.id && text === from.text);
  const back = `/exercises/${exerciseId}/references`;
  return (
    <Page width="wide">
      <PageHeader
        title="Carry a reference over"
        trail={[
          { href: `/exercises/${exerciseId}`, label: exercise.title },
          { href: back, label: 'References' },
        ]}
        lead="What is decided at one size or weight does not simply transfer. It is a start, to be looked at line by line."
      />
      <SpecimenFigure
        {...from}
        spacing={reference.spacing}
        caption={`“${from.text}”, ${lineWords(from)}, as ${reference.mine ? 'you' : reference.author} set it.`}
      />
      {others.length === 0 ? (
        <EmptyState
          title="No other line has this text"
          action={<ButtonLink href={back}>Back to the references</ButtonLink>}
        >
          A reference can be carried to lines with the same text in another size, weight or face.
        </EmptyState>
      ) : (
        <Form action={carryReferenceAction} label="Carry a reference over">
          <input type="hidden" name="referenceId" value={reference.id} />
          <fieldset className="field" id="field-specimenIds">
            <legend>To</legend>
            <p className="hint">
              In another weight or face, each total is kept as a share of the face’s own stem gap. At another size,
              tracking follows what reading faces ask for: 10 thousandths tighter for each doubling above 16 px, 15
              wider for each halving below.
            </p>
            {others.map((specimen) => {
              const mine = specimen.references.some((one) => one.mine && !one.started);
              return (
                <Checkbox
                  key={specimen.id}
                  name="specimenIds"
                  value={specimen.id}
                  label={lineWords(specimen)}
                  hint={mine ? 'You have set it already.' : undefined}
                  defaultChecked={!mine}
                />
              );
            })}
          </fieldset>
          <Checkbox name="replace" label="Replace references that I have set there" />
          <div className="actions">
            <SubmitButton pending="Carrying…">Carry it over</SubmitButton>
            <ButtonLink kind="text" href={back}>
              Back without
            </ButtonLink>
          </div>
        </Form>
      )}
    </Page>
  );
}

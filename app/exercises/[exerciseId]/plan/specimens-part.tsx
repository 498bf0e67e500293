import Link from 'next/link';
import { ButtonLink } from '@/app/_ui/Button';
import { EmptyState, Section } from '@/app/_ui/Page';
import { Form, SubmitButton } from '@/app/_ui/Form';
import type { Plan } from '@/lib/exercise/plan';
import { counted } from '@/shared/text/number';
import { restoreSpecimenAction } from './actions';
import { SpecimenFigure } from './specimens/specimen-figure';
import { lineWords } from '@/shared/line/line-words';

type Props = {
  exercise: { id: string };
  specimens: Plan['specimens'];
  retired: Plan['retiredSpecimens'];
  checks: Plan['checks'];
};

/** The lines in their faces' own spacing, each on its own ground. */
export function SpecimensPart({ exercise, specimens, retired, checks }: Props) {
  const add = (
    <>
      <ButtonLink
        kind={specimens.length === 0 ? 'main' : 'usual'}
        href={`/exercises/${exercise.id}/plan/specimens/new`}
      >
        Add lines
      </ButtonLink>
      <ButtonLink href={`/exercises/${exercise.id}/plan/specimens/find`}>Find words</ButtonLink>
    </>
  );
  const references = checks.find(({ part }) => part === 'references');
  return (
    <Section
      id="specimens"
      title="Lines"
      lead={references && specimens.length > 0 ? references.message : undefined}
      actions={
        specimens.length > 0 ? (
          <>
            {add}
            <ButtonLink href={`/exercises/${exercise.id}/references`}>References</ButtonLink>
          </>
        ) : undefined
      }
    >
      {specimens.length === 0 && (
        <EmptyState title="No lines yet" action={add}>
          A line is a text in a face, at a size, on a ground. You can add many at once.
        </EmptyState>
      )}
      {specimens.length > 0 && (
        <ol className="specimen-list" role="list">
          {specimens.map((specimen, index) => (
            <li key={specimen.id}>
              <SpecimenFigure
                {...specimen}
                caption={
                  <>
                    <Link href={`/exercises/${exercise.id}/plan/specimens/${specimen.id}`}>
                      {index + 1}. “{specimen.text}”
                    </Link>
                    , {lineWords(specimen)}
                    {specimen.number > 1 && `, version ${specimen.number}`}. {referenceWords(specimen)}
                    {specimen.details.remark && ` Remark: ${specimen.details.remark}`}
                  </>
                }
              />
            </li>
          ))}
        </ol>
      )}
      {retired.length > 0 && (
        <details className="more">
          <summary>Removed ({retired.length})</summary>
          <ul className="card-list">
            {retired.map((specimen) => (
              <li key={specimen.id}>
                <p>
                  “{specimen.text}”, {lineWords(specimen)}
                </p>
                <Form action={restoreSpecimenAction} label={`Restore “${specimen.text}”`}>
                  <input type="hidden" name="specimenId" value={specimen.id} />
                  <div className="actions">
                    <SubmitButton kind="usual" small>
                      Restore
                    </SubmitButton>
                  </div>
                </Form>
              </li>
            ))}
          </ul>
        </details>
      )}
    </Section>
  );
}

function referenceWords({ references, started }: { references: number; started: number }): string {
  const set = references === 0 ? 'No reference' : counted(references, 'reference take');
  return started === 0 ? `${set}.` : `${set}, ${started} carried over and not looked at.`;
}

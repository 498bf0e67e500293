import Link from 'next/link';
import { ButtonLink } from '@/app/_ui/Button';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { When } from '@/app/_ui/Status';
import type { SpecimenView } from '@/lib/rows/specimen';
import type { ReferenceView } from '@/lib/rows/reference';
import { SpecimenFigure } from '../plan/specimens/specimen-figure';
import { lineWords } from '@/shared/line/line-words';
import { acceptReferenceAction } from './actions';

type Reference = ReferenceView & { started: boolean; mine: boolean; updatedAt: Date; repeatability: number | null };
type Props = {
  exerciseId: string;
  specimen: SpecimenView & { references: Reference[] };
  place: number;
  timeZone: string;
};

/** One line in the face's own spacing, and under it each reference as its author set it. */
export function ReferenceLine({ exerciseId, specimen, place, timeZone }: Props) {
  const bench = `/exercises/${exerciseId}/references/${specimen.id}`;
  const mine = specimen.references.find((reference) => reference.mine);
  return (
    <li>
      <SpecimenFigure
        {...specimen}
        spacing={(mine ?? specimen.references[0])?.spacing}
        caption={
          <>
            {place}. “{specimen.text}”, {lineWords(specimen)}. {shownWords(specimen.references, mine)}
          </>
        }
      />
      {specimen.references.map((reference) => (
        <div key={reference.id} className="actions note-size">
          <span>
            {reference.mine ? 'Yours' : reference.author}, <When at={reference.updatedAt} timeZone={timeZone} short />
            {reference.started && <strong> · carried over, not looked at yet</strong>}
            {reference.repeatability !== null && ` · set twice, repeatable within ±${reference.repeatability}`}
          </span>
          {reference.mine && reference.started && (
            <Form action={acceptReferenceAction} label={`Accept the carried reference of “${specimen.text}”`} inline>
              <input type="hidden" name="referenceId" value={reference.id} />
              <SubmitButton kind="usual" small>
                Accept
              </SubmitButton>
            </Form>
          )}
          {!reference.started && (
            <Link href={`/exercises/${exerciseId}/references/carry?reference=${reference.id}`}>
              Carry it to other lines
            </Link>
          )}
        </div>
      ))}
      <div className="actions">
        <ButtonLink small href={bench}>
          {mine ? 'Open yours on the bench' : 'Set a reference'}
        </ButtonLink>
        {mine && !mine.started && (
          <ButtonLink small kind="text" href={`${bench}?take=2`}>
            {mine.repeatability === null ? 'Set it a second time' : 'Open the second take'}
          </ButtonLink>
        )}
      </div>
    </li>
  );
}

function shownWords(references: readonly Reference[], mine: Reference | undefined): string {
  if (references.length === 0) return 'Shown as the face sets it.';
  return mine ? 'Shown as you set it.' : `Shown as ${references[0]!.author} set it.`;
}

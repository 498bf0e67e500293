import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { DateTimeField } from '@/app/_ui/Field';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { When } from '@/app/_ui/Status';
import { setSectionDatesAction } from '@/app/exercises/[exerciseId]/plan/actions';
import { PlanPage } from '@/app/exercises/[exerciseId]/plan/plan-page';
import { getRound } from '@/lib/exercise/rounds';
import { forPage } from '@/lib/http/page';

export const metadata: Metadata = { title: 'Dates of a section' };

type Props = { params: Promise<{ exerciseId: string; roundId: string; sectionId: string }> };

/** The dates of a round that hold for one section alone; an empty field inherits the round's. */
export default async function SectionDatesPage({ params }: Props) {
  const { roundId, sectionId } = await params;
  const { round, exercise, timeZone, sections } = await forPage(getRound, { roundId });
  const section = sections.find(({ id }) => id === sectionId);
  if (!section) notFound();
  const own = round.sections.find((dates) => dates.sectionId === sectionId);
  return (
    <PlanPage
      exercise={exercise}
      title={`${section.name} in round ${round.number}`}
      lead={
        round.dueAt ? (
          <>
            For everyone else it is due <When at={round.dueAt} timeZone={timeZone} />.
          </>
        ) : undefined
      }
    >
      <Form action={setSectionDatesAction} label={`Dates for ${section.name}`}>
        <input type="hidden" name="roundId" value={round.id} />
        <input type="hidden" name="sectionId" value={section.id} />
        <input type="hidden" name="version" value={own?.version ?? -1} />
        <DateTimeField
          name="opensLocal"
          label="Opens"
          optional
          timeZone={timeZone}
          defaultValue={own?.opensLocal ?? undefined}
          hint="If empty, it opens as for everyone else."
        />
        <DateTimeField
          name="dueLocal"
          label="Due"
          optional
          timeZone={timeZone}
          defaultValue={own?.dueLocal ?? undefined}
          hint="If empty, it is due as for everyone else. A last date for late proofs moves with it, by the same time."
        />
        <div className="actions">
          <SubmitButton pending="Saving…">Save the dates</SubmitButton>
        </div>
      </Form>
    </PlanPage>
  );
}

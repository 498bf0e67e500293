import type { Metadata } from 'next';
import { DateTimeField } from '@/app/_ui/DateTimeField';
import { Form } from '@/app/_ui/Form';
import { Select } from '@/app/_ui/Select';
import { SubmitButton } from '@/app/_ui/SubmitButton';
import { When } from '@/app/_ui/When';
import { getRound } from '@/lib/exercise/get-round';
import { forPage } from '@/lib/http/page';
import { extendRoundAction } from '../../../actions';
import { PlanPage } from '../../../plan-page';

export const metadata: Metadata = { title: 'More time' };

type Props = { params: Promise<{ exerciseId: string; roundId: string }> };

export default async function MoreTime({ params }: Props) {
  const { roundId } = await params;
  const { round, exercise, timeZone, students } = await forPage(getRound, { roundId });
  return (
    <PlanPage exercise={exercise} title={`More time in round ${round.number}`} lead={round.dueAt ? <>For everybody else it is due <When at={round.dueAt} timeZone={timeZone} />.</> : undefined}>
      <Form action={extendRoundAction} label="More time">
        <input type="hidden" name="roundId" value={round.id} />
        <Select name="memberId" label="Student" placeholder="Choose a student" choices={students.map(({ id, name }) => ({ value: id, label: name }))} />
        <DateTimeField name="dueLocal" label="Due for this student" timeZone={timeZone} defaultValue={round.dueLocal ?? undefined} hint="A later date replaces an earlier one that this student had." />
        <div className="actions"><SubmitButton pending="Saving…">Give more time</SubmitButton></div>
      </Form>
    </PlanPage>
  );
}

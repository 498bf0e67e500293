import type { Metadata } from 'next';
import { DateTimeField } from '@/app/_ui/Field';
import { FindField } from '@/app/_ui/Pages';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Select } from '@/app/_ui/Select';
import { When } from '@/app/_ui/Status';
import { listPeople } from '@/lib/course/people';
import { getRound } from '@/lib/exercise/rounds';
import { forPage } from '@/lib/http/page';
import { extendRoundAction } from '@/app/exercises/[exerciseId]/plan/actions';
import { PlanPage } from '@/app/exercises/[exerciseId]/plan/plan-page';

export const metadata: Metadata = { title: 'More time' };

type Props = { params: Promise<{ exerciseId: string; roundId: string }>; searchParams: Promise<{ find?: string }> };

export default async function MoreTime({ params, searchParams }: Props) {
  const { exerciseId, roundId } = await params;
  const { round, exercise, courseId, timeZone } = await forPage(getRound, { roundId });
  const { students, found, studentCount, find } = await forPage(listPeople, {
    courseId,
    find: (await searchParams).find ?? '',
  });
  return (
    <PlanPage
      exercise={exercise}
      title={`More time in round ${round.number}`}
      lead={
        round.dueAt ? (
          <>
            For everyone else it is due <When at={round.dueAt} timeZone={timeZone} />.
          </>
        ) : undefined
      }
    >
      {(find !== '' || studentCount > students.length) && (
        <>
          <FindField
            label="Find a student"
            find={find}
            action={`/exercises/${exerciseId}/plan/rounds/${roundId}/more-time`}
            hint="Part of a name, or the beginning of an e-mail address with its @."
          />
          <p role="status">
            {found === 0 ? (
              <>No names match “{find}”.</>
            ) : (
              `The list below holds ${students.length} of ${studentCount} students${found > students.length ? '; find the others by name' : ''}.`
            )}
          </p>
        </>
      )}
      <Form action={extendRoundAction} label="More time">
        <input type="hidden" name="roundId" value={round.id} />
        <Select
          name="memberId"
          label="Student"
          placeholder="Choose a student"
          choices={students.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <DateTimeField
          name="dueLocal"
          label="Due for this student"
          timeZone={timeZone}
          defaultValue={round.dueLocal ?? undefined}
          hint="A later date replaces an earlier one that this student had."
        />
        <div className="actions">
          <SubmitButton pending="Saving…">Give more time</SubmitButton>
        </div>
      </Form>
    </PlanPage>
  );
}

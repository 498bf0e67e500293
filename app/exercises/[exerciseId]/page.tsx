import { randomUUID } from 'node:crypto';
import type { Metadata } from 'next';
import { getExerciseRole } from '@/lib/exercise/exercises';
import { forPage } from '@/lib/http/page';
import { getWork } from '@/lib/work/overview';
import { teaches } from '@/shared/schemas/course';
import { StaffOverview } from './staff-overview';
import { StudentOverview } from './student-overview';

type Props = { params: Promise<{ exerciseId: string }>; searchParams: Promise<{ published?: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: (await forPage(getExerciseRole, { exerciseId: (await params).exerciseId })).title };
}

/** One address, two pages: the student's work, and the staff's overview. */
export default async function ExercisePage({ params, searchParams }: Props) {
  const { exerciseId } = await params;
  const { role } = await forPage(getExerciseRole, { exerciseId });
  if (teaches(role))
    return <StaffOverview exerciseId={exerciseId} published={(await searchParams).published === '1'} />;
  // A new key each time the form is shown: sending the same form twice makes one proof.
  return <StudentOverview work={await forPage(getWork, { exerciseId })} requestKey={randomUUID()} />;
}

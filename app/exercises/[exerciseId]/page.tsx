import { randomUUID } from 'node:crypto';
import type { Metadata } from 'next';
import { getExerciseRole } from '@/lib/exercise/exercises';
import { forPage } from '@/lib/http/page';
import { getWork } from '@/lib/work/overview';
import { teaches } from '@/shared/schemas/course';
import { StaffOverview } from './staff-overview';
import { StudentOverview } from './student-overview';

type Props = { params: Promise<{ exerciseId: string }>; searchParams: Promise<{ published?: string }> };

export const metadata: Metadata = { title: 'Exercise' };

/** One address, two sides: what a student does here, and what staff look after. */
export default async function ExercisePage({ params, searchParams }: Props) {
  const { exerciseId } = await params;
  const { role } = await forPage(getExerciseRole, { exerciseId });
  if (teaches(role))
    return <StaffOverview exerciseId={exerciseId} published={(await searchParams).published === '1'} />;
  // A new key for each look at the form: sending the same form twice is one proof.
  return <StudentOverview work={await forPage(getWork, { exerciseId })} requestKey={randomUUID()} />;
}

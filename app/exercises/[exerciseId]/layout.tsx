import type { Metadata } from 'next';
import type { ReactNode } from 'react';
import { getExerciseRole } from '@/lib/exercise/exercises';
import { forPage } from '@/lib/http/page';

type Props = { params: Promise<{ exerciseId: string }> };

/** Each page under an exercise says in its title whose it is: “Plan · Signs for a harbour · Kerncrit”. */
export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { title } = await forPage(getExerciseRole, { exerciseId: (await params).exerciseId });
  return { title: { default: title, template: `%s · ${title} · Kerncrit` } };
}

export default function ExerciseLayout({ children }: { children: ReactNode }) {
  return children;
}

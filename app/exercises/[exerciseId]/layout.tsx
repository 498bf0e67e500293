import type { Metadata } from 'next';
import type { ReactNode } from 'react';
import { getExerciseRole } from '@/lib/exercise/exercises';
import { forTitle } from '@/lib/http/page';

type Props = { params: Promise<{ exerciseId: string }> };

/** Each page under an exercise says in its title whose it is: “Plan · Signs for a harbour · Kerncrit”. */
export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const found = await forTitle(getExerciseRole, { exerciseId: (await params).exerciseId });
  return found ? { title: { default: found.title, template: `%s · ${found.title} · Kerncrit` } } : {};
}

export default function ExerciseLayout({ children }: { children: ReactNode }) {
  return children;
}

import type { Metadata } from 'next';
import type { ReactNode } from 'react';
import { getCourse } from '@/lib/course/courses';
import { forTitle } from '@/lib/http/page';

type Props = { params: Promise<{ courseId: string }> };

/** Each page under a course says in its title whose it is: “People · Lettering for display · Kerncrit”. */
export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const found = await forTitle(getCourse, { courseId: (await params).courseId });
  return found ? { title: { default: found.title, template: `%s · ${found.title} · Kerncrit` } } : {};
}

export default function CourseLayout({ children }: { children: ReactNode }) {
  return children;
}

import type { Metadata } from 'next';
import type { ReactNode } from 'react';
import { getCourse } from '@/lib/course/courses';
import { forPage } from '@/lib/http/page';

type Props = { params: Promise<{ courseId: string }> };

/** Each page under a course says in its title whose it is: “People · Lettering for display · Kerncrit”. */
export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { title } = await forPage(getCourse, { courseId: (await params).courseId });
  return { title: { default: title, template: `%s · ${title} · Kerncrit` } };
}

export default function CourseLayout({ children }: { children: ReactNode }) {
  return children;
}

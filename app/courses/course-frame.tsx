import { type Role, roleSchema } from '@/shared/schemas/course';
import { CourseBar, type Tab } from '../_ui/Tabs';

export type FramedCourse = { id: string; title: string; role: string };
type Part = 'exercises' | 'class' | 'term' | 'people' | 'settings';

/** The bar of one course, with the parts that the person's role may open. */
export function CourseFrame({ course, current }: { course: FramedCourse; current: Part }) {
  const open = new Set<Part>(openTo[roleSchema.parse(course.role)]);
  const tabs = parts
    .filter(({ part }) => open.has(part))
    .map(({ label, path }): Tab => ({ label, href: `/courses/${course.id}${path}` }));
  const here = parts.find(({ part }) => part === current)!;
  return <CourseBar name={course.title} tabs={tabs} current={`/courses/${course.id}${here.path}`} />;
}

const openTo: Record<Role, readonly Part[]> = {
  instructor: ['exercises', 'class', 'people', 'settings'],
  assistant: ['exercises', 'class', 'people'],
  student: ['exercises', 'term'],
};

const parts: { part: Part; label: string; path: string }[] = [
  { part: 'exercises', label: 'Exercises', path: '' },
  { part: 'class', label: 'Class', path: '/class' },
  { part: 'term', label: 'My term', path: '/term' },
  { part: 'people', label: 'People', path: '/people' },
  { part: 'settings', label: 'Settings', path: '/settings' },
];

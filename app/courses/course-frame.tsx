import { CourseBar, type Tab } from '../_ui/Tabs';

export type FramedCourse = { id: string; title: string; role: string };
type Part = 'exercises' | 'class' | 'term' | 'people' | 'settings';

/** The bar of one course; each person sees the parts that are open to their role. */
export function CourseFrame({ course, current }: { course: FramedCourse; current: Part }) {
  const tabs = parts
    .filter(({ for: whom }) => whom.includes(course.role))
    .map(({ label, path }): Tab => ({ label, href: `/courses/${course.id}${path}` }));
  const here = parts.find(({ part }) => part === current)!;
  return <CourseBar name={course.title} tabs={tabs} current={`/courses/${course.id}${here.path}`} />;
}

const everyone = ['instructor', 'assistant', 'student'];

const parts: { part: Part; label: string; path: string; for: string[] }[] = [
  { part: 'exercises', label: 'Exercises', path: '', for: everyone },
  { part: 'class', label: 'Class', path: '/class', for: ['instructor', 'assistant'] },
  { part: 'term', label: 'My term', path: '/term', for: ['student'] },
  { part: 'people', label: 'People', path: '/people', for: ['instructor', 'assistant'] },
  { part: 'settings', label: 'Settings', path: '/settings', for: ['instructor'] },
];

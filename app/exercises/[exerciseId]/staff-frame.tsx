import { CourseBar } from '@/app/_ui/Tabs';

type Part = 'overview' | 'plan' | 'references' | 'demonstrations' | 'class';
type Props = { exercise: { id: string; title: string }; current: Part; mayPlan: boolean };

/** At the top of every staff page of one exercise: its parts. Only an instructor sees the plan. */
export function StaffFrame({ exercise, current, mayPlan }: Props) {
  const tabs = parts
    .filter(({ part }) => part !== 'plan' || mayPlan)
    .map(({ label, path }) => ({ label, href: `/exercises/${exercise.id}${path}` }));
  return (
    <CourseBar
      name={exercise.title}
      tabs={tabs}
      current={`/exercises/${exercise.id}${parts.find(({ part }) => part === current)!.path}`}
    />
  );
}

const parts: { part: Part; label: string; path: string }[] = [
  { part: 'overview', label: 'Overview', path: '' },
  { part: 'plan', label: 'Plan', path: '/plan' },
  { part: 'references', label: 'References', path: '/references' },
  { part: 'demonstrations', label: 'Demonstrations', path: '/demonstrations' },
  { part: 'class', label: 'Class', path: '/class' },
];

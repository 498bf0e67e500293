import { Tabs, type Tab } from './Tabs';

/** Under the site bar on every page of a course: its name and its parts. */
export function CourseBar({ name, tabs, current }: { name: string; tabs: Tab[]; current: string }) {
  return (
    <section className="course-bar" aria-label={name}>
      <div className="course-bar-inside">
        <p className="course-bar-name">{name}</p>
        <Tabs label={'Parts of the course'} tabs={tabs} current={current} />
      </div>
    </section>
  );
}

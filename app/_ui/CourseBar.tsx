import { Tabs, type Tab } from './Tabs';

/** Under the site bar on every page of a course: its name and its parts. */
export function CourseBar({ name, tabs, current }: { name: string; tabs: Tab[]; current: string }) {
  return (
    <div className="course-bar">
      <div className="course-bar-inside">
        <p className="course-bar-name">{name}</p>
        <Tabs label={`Parts of ${name}`} tabs={tabs} current={current} />
      </div>
    </div>
  );
}

import Link from 'next/link';

export type Tab = { href: string; label: string; count?: number };

/** Parts of one thing as plain links; `current` is the href of the one shown. */
export function Tabs({ label, tabs, current }: { label: string; tabs: Tab[]; current: string }) {
  return (
    <nav aria-label={label}>
      <ul className="tabs" role="list">
        {tabs.map((tab) => (
          <li key={tab.href}>
            <Link href={tab.href} aria-current={tab.href === current ? 'page' : undefined}>
              {tab.label}
              {tab.count !== undefined && <span className="tab-count"> {tab.count}</span>}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}

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

import Link from 'next/link';

export type Crumb = { href: string; label: string };

/** The way down to this page. */
export function Breadcrumb({ trail }: { trail: Crumb[] }) {
  return (
    <nav className="trail" aria-label="You are in">
      <ol role="list">
        {trail.map((crumb) => (
          <li key={crumb.href}>
            <Link href={crumb.href}>{crumb.label}</Link>
          </li>
        ))}
      </ol>
    </nav>
  );
}

import Link from 'next/link';
import { type ReactNode, useId } from 'react';
import { classes } from './classes';

/**
 * The main column: 60–75 characters, `wide` for tables and sheets, `full` for what uses the whole width; `workbench` is
 * one screen without the site's own bar and foot.
 * Every route renders exactly one.
 */
export function Page({
  width = 'text',
  children,
}: {
  width?: 'text' | 'wide' | 'full' | 'workbench';
  children: ReactNode;
}) {
  return (
    <main
      id="main"
      tabIndex={-1}
      className={classes(
        'page',
        width === 'wide' && 'page-wide',
        width === 'full' && 'page-wide page-full',
        width === 'workbench' && 'page-workbench',
      )}
    >
      {children}
    </main>
  );
}

type PageHeaderProps = {
  title: ReactNode;
  /** The pages above this one, from the course down; without the page itself. */
  trail?: Crumb[];
  /** A few words above the title. */
  kicker?: ReactNode;
  /** One sentence under the title. */
  lead?: ReactNode;
  /** Buttons for the page as a whole. */
  actions?: ReactNode;
};

/** The head of a page: path, title (the page's one h1), a sentence, actions. */
export function PageHeader({ title, trail, kicker, lead, actions }: PageHeaderProps) {
  return (
    <header className="page-header">
      {trail && trail.length > 0 && <Breadcrumb trail={trail} />}
      {kicker && <p className="kicker">{kicker}</p>}
      <h1>{title}</h1>
      {lead && <p className="lead">{lead}</p>}
      {actions && <div className="actions">{actions}</div>}
    </header>
  );
}

type Crumb = { href: string; label: string };

/** The path down to this page. */
function Breadcrumb({ trail }: { trail: Crumb[] }) {
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

type SectionProps = {
  title: ReactNode;
  level?: 2 | 3;
  lead?: ReactNode;
  actions?: ReactNode;
  id?: string;
  children: ReactNode;
};

/** A titled part of a page; `id` makes it a target for links. */
export function Section({ title, level = 2, lead, actions, id, children }: SectionProps) {
  const generated = useId();
  const headingId = id ? `${id}-title` : generated;
  const Heading = level === 2 ? 'h2' : 'h3';
  return (
    <section className="section" id={id} aria-labelledby={headingId}>
      <Heading id={headingId}>{title}</Heading>
      {lead && <p className="section-lead">{lead}</p>}
      {children}
      {actions && <div className="actions">{actions}</div>}
    </section>
  );
}

/** An empty list or page: why it is empty, and what to do next (`action` is a ButtonLink or a form). */
export function EmptyState({ title, children, action }: { title: string; children: ReactNode; action?: ReactNode }) {
  return (
    <div className="empty">
      <h2>{title}</h2>
      <p>{children}</p>
      {action}
    </div>
  );
}

type NoticeProps = {
  children: ReactNode;
  title?: string;
  /** `caution` for law and policy, `warning` for what will be lost. */
  kind?: 'plain' | 'warning' | 'caution';
  /** Announced to screen readers when it appears. Leave it off for what is on the page from the start. */
  live?: 'polite' | 'assertive';
};

/** A remark that must not be overlooked. */
export function Notice({ children, title, kind = 'plain', live }: NoticeProps) {
  return (
    <div
      className={classes('notice', kind !== 'plain' && `notice-${kind}`)}
      role={live && (live === 'assertive' ? 'alert' : 'status')}
    >
      {title && (
        <p>
          <strong>{title}</strong>
        </p>
      )}
      {typeof children === 'string' ? <p>{children}</p> : children}
    </div>
  );
}

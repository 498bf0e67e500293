import { useId, type ReactNode } from 'react';

type Props = {
  title: ReactNode;
  level?: 2 | 3;
  lead?: ReactNode;
  actions?: ReactNode;
  id?: string;
  children: ReactNode;
};

/** A titled part of a page; `id` makes it a target for links. */
export function Section({ title, level = 2, lead, actions, id, children }: Props) {
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

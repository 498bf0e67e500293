import type { ReactNode } from 'react';
import { Breadcrumb, type Crumb } from './Breadcrumb';

type Props = {
  title: ReactNode;
  /** Where this page lies, from the course down; the page itself is left out. */
  trail?: Crumb[];
  /** A few words over the title. */
  kicker?: ReactNode;
  /** One sentence under the title. */
  lead?: ReactNode;
  /** Buttons that act on the whole page. */
  actions?: ReactNode;
};

/** The head of a page: trail, title (the page's one h1), a sentence, actions. */
export function PageHeader({ title, trail, kicker, lead, actions }: Props) {
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

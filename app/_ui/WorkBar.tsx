import Link from 'next/link';
import { Children, type ReactNode } from 'react';
import { ButtonLink } from './Button';

type Place = {
  back: { href: string; label: string };
  /** The page's one h1. */
  title: ReactNode;
  /** What is being worked on. */
  line?: ReactNode;
  remark?: ReactNode;
};

/** The left of the slim bar over bench and desk: where one is. */
export function BarPlace({ back, title, line, remark }: Place) {
  return (
    <div className="work-bar-place">
      <Link href={back.href}>{back.label}</Link>
      <h1>{title}</h1>
      {line && <span className="quiet">{line}</span>}
      {remark && <span className="work-bar-remark">{remark}</span>}
    </div>
  );
}

type Onward = {
  due?: ReactNode;
  previous?: string | null;
  next?: string | null;
  main?: { href: string; label: string };
  /** Ways that are seldom taken, each a link. */
  children?: ReactNode;
};

/** The right of it: where one goes from here, the seldom ways in a list that opens. */
export function BarOnward({ due, previous, next, main, children }: Onward) {
  const more = Children.toArray(children);
  return (
    <nav className="work-bar-onward" aria-label="From here">
      {due && <span className="quiet">due {due}</span>}
      {main && <Link href={main.href}>{main.label}</Link>}
      {more.length > 0 && (
        <details className="work-bar-more">
          <summary>More</summary>
          <ul role="list">
            {more.map((way, index) => (
              <li key={index}>{way}</li>
            ))}
          </ul>
        </details>
      )}
      {previous && (
        <ButtonLink small href={previous}>
          Previous line
        </ButtonLink>
      )}
      {next && (
        <ButtonLink small href={next}>
          Next line
        </ButtonLink>
      )}
    </nav>
  );
}

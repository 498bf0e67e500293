import Link from 'next/link';
import { Button } from './Button';

type Props = {
  /** What is listed, for screen readers: “Pages of students”. */
  label: string;
  page: number;
  pages: number;
  href: (page: number) => string;
};

/** Links through a list that is shown a page at a time. Nothing where it all fits on one page. */
export function Pages({ label, page, pages, href }: Props) {
  if (pages <= 1) return null;
  return (
    <nav aria-label={label} className="actions">
      {page > 2 && (
        <Link href={href(1)} prefetch={false}>
          First page
        </Link>
      )}
      {page > 1 && (
        <Link href={href(page - 1)} prefetch={false} rel="prev">
          Page before
        </Link>
      )}
      <span className="quiet" aria-current="page">
        Page {page} of {pages}
      </span>
      {page < pages && (
        <Link href={href(page + 1)} prefetch={false} rel="next">
          Next page
        </Link>
      )}
      {page < pages - 1 && (
        <Link href={href(pages)} prefetch={false}>
          Last page
        </Link>
      )}
    </nav>
  );
}

type FindFieldProps = { label: string; find: string; action: string; hint: string };

/**
 * Searches for a name in a list that is longer than a page; works without JavaScript, and the search stays in the
 * address.
 */
export function FindField({ label, find, action, hint }: FindFieldProps) {
  return (
    <search>
      <form action={action} method="get" className="form form-inline" aria-label={label}>
        <div className="field">
          <label htmlFor="field-find">{label}</label>
          <input
            type="search"
            id="field-find"
            name="find"
            defaultValue={find}
            autoComplete="off"
            aria-describedby="field-find-hint"
          />
          <p className="hint" id="field-find-hint">
            {hint}
          </p>
        </div>
        <Button type="submit" small>
          Find
        </Button>
      </form>
    </search>
  );
}

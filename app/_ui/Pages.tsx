import Link from 'next/link';

type Props = {
  /** What the pages are of, for readers that cannot see them: “Pages of students”. */
  label: string;
  page: number;
  pages: number;
  href: (page: number) => string;
};

/** The way through a list that is shown a page at a time. Nothing where one page holds it all. */
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

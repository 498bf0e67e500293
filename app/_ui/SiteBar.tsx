import Link from 'next/link';
import type { ReactNode } from 'react';

/** The bar over every page: the product's name, and on the right what concerns the person (links, sign out). */
export function SiteBar({ home = '/', children }: { home?: string; children?: ReactNode }) {
  return (
    <header className="bar">
      <div className="bar-inside">
        <Link className="bar-name" href={home}>
          Kerncrit
        </Link>
        <nav className="bar-links" aria-label="Main">
          {children}
          <Link href="/words">Words</Link>
        </nav>
      </div>
    </header>
  );
}

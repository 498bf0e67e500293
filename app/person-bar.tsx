import Link from 'next/link';
import type { ReactNode } from 'react';
import { getSelf } from '@/lib/account/account';
import { forPage } from '@/lib/http/page';

/** The bar at the top of every page, with the links of the person who is signed in. */
export async function PersonBar() {
  const self = await forPage(getSelf);
  if (!self)
    return (
      <SiteBar>
        <Link href="/sign-in">Sign in</Link>
      </SiteBar>
    );
  return (
    <SiteBar home="/courses">
      <Link href="/courses">Courses</Link>
      <Link href="/practice">Practice</Link>
      <Link href="/account">{self.name}</Link>
    </SiteBar>
  );
}

/** The bar at the top of every page: the product's name, and on the right the person's links and sign out. */
function SiteBar({ home = '/', children }: { home?: string; children?: ReactNode }) {
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

/** The foot of every page: what a school must be able to reach from anywhere. */
export function SiteFoot() {
  return (
    <footer className="foot">
      <nav className="foot-inside" aria-label="About this site">
        <Link href="/words">The words</Link>
        <Link href="/faces">Faces and licences</Link>
        <Link href="/records">Records and privacy</Link>
        <Link href="/accessibility">Accessibility</Link>
      </nav>
    </footer>
  );
}

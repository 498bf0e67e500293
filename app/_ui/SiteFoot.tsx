import Link from 'next/link';

/** The foot of every page: what a school must be able to find from anywhere. */
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

/**
 * Where to go after signing in: `asked` if it is an address inside this site, else the person's courses.
 * Browsers read `//host`, `/\host` and addresses with tabs or line ends in them as other sites, so those are refused
 * (WHATWG URL: backslashes count as slashes, tabs and newlines are dropped).
 */
export function safeNext(asked: unknown, otherwise = '/courses'): string {
  if (typeof asked !== 'string' || asked.length > 2000) return otherwise;
  if (!/^\/(?![/\\])[\x21-\x7e\u00a0-\uffff]*$/u.test(asked) || asked.includes('\\')) return otherwise;
  const here = 'http://here.invalid';
  if (!URL.canParse(asked, here)) return otherwise;
  const parsed = new URL(asked, here);
  if (parsed.origin !== here || leadsAround(parsed.pathname)) return otherwise;
  return parsed.pathname + parsed.search + parsed.hash;
}

/** Signing in must not end at signing in again, nor at a file for programs. */
function leadsAround(path: string): boolean {
  return (
    path === '/sign-in' ||
    path.startsWith('/api/') ||
    path === '/api' ||
    path.startsWith('/sign-in/') ||
    path.startsWith('//')
  );
}

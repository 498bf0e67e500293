import { AppError } from '@/lib/access/errors';

const safe = new Set(['GET', 'HEAD', 'OPTIONS']);

/**
 * Refuses a write that another site started: Sec-Fetch-Site (W3C Fetch Metadata) where the browser sends it, else Origin against Host.
 */
export function refuseCrossSite(request: Request): void {
  if (safe.has(request.method)) return;
  const site = request.headers.get('sec-fetch-site');
  if (site === 'same-origin' || site === 'none') return;
  if (site === null && originMatches(request)) return;
  throw new AppError(
    'INVALID',
    'This request came from another site, so nothing was changed. Open Kerncrit itself and try again there.',
  );
}

function originMatches(request: Request): boolean {
  const origin = request.headers.get('origin');
  if (origin === null) return false;
  const host = request.headers.get('x-forwarded-host') ?? request.headers.get('host');
  return URL.canParse(origin) && new URL(origin).host === host;
}

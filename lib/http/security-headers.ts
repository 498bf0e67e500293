type Policy = { page: boolean; nonce: string; production: boolean; https: boolean; issuer: string | null };

/**
 * Content Security Policy, Level 3. Scripts run only with the answer's own nonce (and what those load); everything else
 * comes from this server alone, and no site may frame it. Answers for programs load nothing at all.
 */
export function contentSecurityPolicy({ page, nonce, production, https, issuer }: Policy): string {
  if (!page) return "default-src 'none'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'";
  const rules: Record<string, string[]> = {
    'default-src': ["'none'"],
    // In development, the framework evaluates code to show where an error came from.
    'script-src': [`'nonce-${nonce}'`, "'strict-dynamic'", ...(production ? [] : ["'unsafe-eval'"])],
    'style-src': production ? ["'self'", `'nonce-${nonce}'`] : ["'self'", "'unsafe-inline'"],
    'img-src': ["'self'", 'data:', 'blob:'],
    'font-src': ["'self'"],
    'connect-src': ["'self'"],
    'manifest-src': ["'self'"],
    'worker-src': ["'self'"],
    // Browsers hold a form to this list even where its answer leads on to the school's own sign-in.
    'form-action': ["'self'", ...(issuer ? [new URL(issuer).origin] : [])],
    'frame-ancestors': ["'none'"],
    'base-uri': ["'none'"],
    'object-src': ["'none'"],
  };
  const written = Object.entries(rules).map(([name, sources]) => `${name} ${sources.join(' ')}`);
  return [...written, ...(https ? ['upgrade-insecure-requests'] : [])].join('; ');
}

/** What every answer carries. HTTPS is asked for in future (RFC 6797) only where it is in use now. */
export function commonHeaders(https: boolean): [name: string, value: string][] {
  return [
    ['x-content-type-options', 'nosniff'],
    ['referrer-policy', 'same-origin'],
    ['x-frame-options', 'DENY'],
    ['cross-origin-opener-policy', 'same-origin'],
    ['cross-origin-resource-policy', 'same-origin'],
    ['permissions-policy', 'camera=(), microphone=(), geolocation=(), payment=(), usb=(), browsing-topics=()'],
    ...(https ? [['strict-transport-security', 'max-age=31536000'] as [string, string]] : []),
  ];
}

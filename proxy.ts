import { NextResponse, type NextRequest } from 'next/server';
import { env } from '@/lib/env';
import { contentSecurityPolicy, commonHeaders } from '@/lib/http/security-headers';

/**
 * Stands before every page and route handler: gives each answer its security headers, each page a nonce of its own,
 * and tells the page its own address (`x-path`), so that signing in can lead back to it.
 */
export function proxy(request: NextRequest): NextResponse {
  const { production, publicOrigin, oidc } = env();
  const page = !request.nextUrl.pathname.startsWith('/api/');
  const nonce = btoa(String.fromCharCode(...crypto.getRandomValues(new Uint8Array(16))));
  const policy = contentSecurityPolicy({
    page,
    nonce,
    production,
    https: publicOrigin.startsWith('https:'),
    issuer: oidc?.issuer ?? null,
  });

  // What the visitor sends under these names is overwritten: the page trusts them.
  const headers = new Headers(request.headers);
  headers.set('content-security-policy', policy);
  headers.set('x-nonce', nonce);
  headers.set('x-path', request.nextUrl.pathname + request.nextUrl.search);

  const response = NextResponse.next({ request: { headers } });
  response.headers.set('content-security-policy', policy);
  for (const [name, value] of commonHeaders(publicOrigin.startsWith('https:'))) response.headers.set(name, value);
  return response;
}

// Files of the build are the same for everyone and get their headers from next.config.
export const config = { matcher: ['/((?!_next/static/).*)'] };

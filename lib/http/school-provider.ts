import type { OAuthConfig } from 'next-auth/providers/oauth';
import { env } from '@/lib/env';

type Claims = { iss: string; sub: string; email?: string; name?: string };

/** The school's own sign-in (OpenID Connect), where the environment names one. */
export function schoolProvider(): OAuthConfig<Claims>[] {
  const { oidc } = env();
  if (oidc === null) return [];
  return [
    {
      id: 'school',
      name: oidc.name,
      type: 'oauth',
      wellKnown: `${oidc.issuer.replace(/\/$/, '')}/.well-known/openid-configuration`,
      issuer: oidc.issuer,
      clientId: oidc.clientId,
      clientSecret: oidc.clientSecret,
      idToken: true,
      checks: ['pkce', 'state', 'nonce'],
      authorization: { params: { scope: 'openid email profile' } },
      // The library's own limit of 3.5 s is short for a school's sign-in on a Monday morning.
      httpOptions: { timeout: 10_000 },
      profile: (claims) => ({ id: claims.sub }),
    },
  ];
}

/** What the sign-in page calls it; null where the school has none. */
export const schoolName = (): string | null => env().oidc?.name ?? null;

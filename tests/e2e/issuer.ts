import { createHash, createSign, generateKeyPairSync, randomUUID } from 'node:crypto';
import { createServer, type IncomingMessage, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';

export type Claims = { sub: string; email?: string; email_verified?: boolean; name?: string };

/**
 * A small issuer of OpenID Connect Core 1.0 (authorization code flow with PKCE S256, RFC 7636; RS256 keys) that signs
 * in the person set as `next`, without asking. It is strict about what the standards require of the other side.
 */
export async function startIssuer(client: { id: string; secret: string }) {
  const { privateKey, publicKey } = generateKeyPairSync('rsa', { modulusLength: 2048 });
  const codes = new Map<string, { claims: Claims; nonce: string | null; challenge: string; redirect: string }>();
  const state: { next: Claims; complaints: string[] } = { next: { sub: 'nobody' }, complaints: [] };
  let issuer = '';

  const server: Server = createServer(async (request, response) => {
    const url = new URL(request.url ?? '/', issuer);
    const json = (body: object, status = 200) =>
      response
        .writeHead(status, { 'content-type': 'application/json', 'cache-control': 'no-store' })
        .end(JSON.stringify(body));
    if (url.pathname === '/.well-known/openid-configuration') {
      return json({
        issuer,
        authorization_endpoint: `${issuer}/authorize`,
        token_endpoint: `${issuer}/token`,
        jwks_uri: `${issuer}/jwks`,
        response_types_supported: ['code'],
        subject_types_supported: ['public'],
        id_token_signing_alg_values_supported: ['RS256'],
      });
    }
    if (url.pathname === '/jwks')
      return json({ keys: [{ ...publicKey.export({ format: 'jwk' }), kid: 'one', use: 'sig', alg: 'RS256' }] });
    if (url.pathname === '/authorize') {
      const asked = url.searchParams;
      if (asked.get('code_challenge_method') !== 'S256' || !asked.get('state') || !asked.get('nonce'))
        state.complaints.push('authorize without PKCE S256, state or nonce');
      if (!asked.get('scope')?.split(' ').includes('openid'))
        state.complaints.push('authorize without the scope openid');
      const code = randomUUID();
      codes.set(code, {
        claims: state.next,
        nonce: asked.get('nonce'),
        challenge: asked.get('code_challenge') ?? '',
        redirect: asked.get('redirect_uri') ?? '',
      });
      const back = new URL(asked.get('redirect_uri')!);
      back.searchParams.set('code', code);
      back.searchParams.set('state', asked.get('state') ?? '');
      return response.writeHead(302, { location: back.href }).end();
    }
    if (url.pathname === '/token') {
      const form = new URLSearchParams(await textOf(request));
      const grant = codes.get(form.get('code') ?? '');
      codes.delete(form.get('code') ?? '');
      const basic = formDecoded(
        Buffer.from((request.headers.authorization ?? '').replace(/^Basic /, ''), 'base64').toString(),
      );
      const verifier = createHash('sha256')
        .update(form.get('code_verifier') ?? '')
        .digest('base64url');
      if (
        !grant ||
        basic !== `${client.id}:${client.secret}` ||
        verifier !== grant.challenge ||
        form.get('redirect_uri') !== grant.redirect
      ) {
        state.complaints.push('token refused');
        return json({ error: 'invalid_grant' }, 400);
      }
      const now = Math.floor(Date.now() / 1000);
      const { claims, nonce } = grant;
      return json({
        access_token: randomUUID(),
        token_type: 'Bearer',
        id_token: sign({ iss: issuer, aud: client.id, iat: now, exp: now + 300, nonce, ...claims }),
      });
    }
    return json({ error: 'not_found' }, 404);
  });

  function sign(payload: object): string {
    const part = (value: object) => Buffer.from(JSON.stringify(value)).toString('base64url');
    const signed = `${part({ alg: 'RS256', kid: 'one', typ: 'JWT' })}.${part(payload)}`;
    return `${signed}.${createSign('RSA-SHA256').update(signed).sign(privateKey, 'base64url')}`;
  }

  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  issuer = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  return { issuer, state, stop: () => new Promise((stopped) => server.close(stopped)) };
}

/** Name and secret are form-encoded before they go into the header (RFC 6749 §2.3.1). */
const formDecoded = (text: string): string => decodeURIComponent(text.replaceAll('+', ' '));

async function textOf(request: IncomingMessage): Promise<string> {
  const chunks: Buffer[] = [];
  for await (const chunk of request) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks).toString('utf8');
}

/**
 * Who calls: what is known before any permission is looked at. Made from the session cookie, or by a command of the
 * server.
 */
export type Caller =
  | { readonly kind: 'visitor'; readonly address: string }
  | { readonly kind: 'person'; readonly userId: string; readonly sessionId: string; readonly address: string }
  | { readonly kind: 'system'; readonly reason: string };

export const systemCaller = (reason: string): Caller => ({ kind: 'system', reason });

import type { Role } from '@/shared/schemas/course';

/**
 * Who acts, as the data layer sees it. Only `operation` makes one.
 * `roles` are those the running operation is open to; each query takes only courses in which the person holds one of
 * them.
 */
export type Actor =
  | { readonly kind: 'visitor' }
  | { readonly kind: 'person'; readonly userId: string; readonly sessionId: string; readonly roles: readonly Role[] }
  | { readonly kind: 'system'; readonly reason: string };

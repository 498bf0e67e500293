/** The roles a member of a course can have. */
export const roles = ['instructor', 'assistant', 'student'] as const;
export type Role = (typeof roles)[number];

/**
 * Who acts, as the data layer sees it. Only `operation` makes one.
 * `roles` are those the running operation is open to; each query takes only courses in which the person holds one of them.
 */
export type Actor =
  | { readonly kind: 'visitor' }
  | { readonly kind: 'person'; readonly userId: string; readonly sessionId: string; readonly roles: readonly Role[] }
  | { readonly kind: 'system'; readonly reason: string };

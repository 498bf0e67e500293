'use client';

/**
 * The outcome of a request: the answer, or a sentence for the person. `again`: whether sending it once more may help.
 */
export type Answer<Result> =
  { ok: true; result: Result } | { ok: false; message: string; again: boolean; signedOut: boolean; body: unknown };

/** Sends JSON to one of our own routes. It never throws: a lost network is an outcome like any other. */
export async function send<Result>(
  method: 'POST' | 'PUT' | 'DELETE',
  address: string,
  body: unknown,
): Promise<Answer<Result>> {
  let response: Response;
  try {
    response = await fetch(address, {
      method,
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
  } catch {
    return { ok: false, message: 'There is no connection to the server.', again: true, signedOut: false, body: null };
  }
  const answer: unknown = await response.json().catch(() => null);
  if (response.ok) return { ok: true, result: answer as Result };
  const { error } = (answer ?? {}) as { error?: { message?: string; body?: unknown } };
  return {
    ok: false,
    message: error?.message ?? `The server answered with ${response.status}.`,
    again: response.status === 401 || response.status === 429 || response.status >= 500,
    signedOut: response.status === 401,
    body: error?.body ?? null,
  };
}

/** Writes an unexpected error to the server's log; never to a person. */
export function logError(error: unknown): void {
  console.error(new Date().toISOString(), error);
}

/** Where the keys lead from here: addresses of pages, null at either end. */
export type Neighbours = { nextStudent: string | null; previousStudent: string | null; nextLine: string | null; previousLine: string | null };

type Here = { token: string; specimenId: string };

/**
 * The proofs before and after this one in the queue (the same line), and the lines before and after this one in the
 * proof; after a student's last line comes the first line of the next student.
 */
export function neighboursOf({ token, specimenId }: Here, queue: readonly { token: string }[], specimenIds: readonly string[]): Neighbours {
  const place = queue.findIndex((entry) => entry.token === token);
  const next = place < 0 ? queue[0] : queue[place + 1];
  const previous = place < 0 ? undefined : queue[place - 1];
  const line = specimenIds.indexOf(specimenId);
  const nextLine = specimenIds[line + 1];
  const previousLine = line > 0 ? specimenIds[line - 1] : undefined;
  return {
    nextStudent: next ? address(next.token, specimenId) : null,
    previousStudent: previous ? address(previous.token, specimenId) : null,
    nextLine: nextLine ? address(token, nextLine) : next && specimenIds[0] ? address(next.token, specimenIds[0]) : null,
    previousLine: previousLine ? address(token, previousLine) : null,
  };
}

export const address = (token: string, specimenId: string): string => `/critique/${token}/${specimenId}`;

import type { DemonstrationSteps } from '@/shared/schemas/demonstration';

export type SendAnswer = 'kept' | 'unreachable' | 'signed out' | { refused: string };

/** Sends a recording; sent again under its own address it is the same one. */
export async function sendRecording(
  address: string,
  body: { specimenVersionId: string; title: string; recorded: DemonstrationSteps },
): Promise<SendAnswer> {
  try {
    const answer = await fetch(address, {
      method: 'PUT',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    if (answer.ok) return 'kept';
    if (answer.status === 401) return 'signed out';
    if (answer.status >= 500) return 'unreachable';
    const said = (await answer.json()) as { error?: { said?: unknown } };
    return { refused: typeof said.error?.said === 'string' ? said.error.said : 'The server did not take it.' };
  } catch {
    return 'unreachable';
  }
}

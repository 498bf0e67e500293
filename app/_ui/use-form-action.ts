'use client';

import { useActionState, useSyncExternalStore } from 'react';
import { unstable_rethrow as rethrowOwnOfFramework } from 'next/navigation';
import { type FormAction, type FormState, typedValues } from '@/shared/schemas/form-state';

/**
 * The state of a form and what sends it. An action that gives no answer (no network, a server that fails or is asked too
 * much) fails the form like any other error, with all that was typed: it doesn't take the page away.
 */
export function useFormAction(action: FormAction, initial: FormState) {
  // Without JavaScript the form is sent to the action itself, so that is what the server and the first render have.
  const inBrowser = useSyncExternalStore(
    never,
    () => true,
    () => false,
  );
  return useActionState(inBrowser ? answering(action) : action, initial);
}

const never = () => () => {};

const answering =
  (action: FormAction): FormAction =>
  async (before, form) => {
    try {
      return await action(before, form);
    } catch (error) {
      rethrowOwnOfFramework(error);
      return { status: 'failed', message: wordsFor(error), fields: {}, values: typedValues(form) };
    }
  };

function wordsFor(error: unknown): string {
  const { digest } = error as { digest?: string };
  return digest
    ? `The server could not do this. The fault is ours and has been written down under ${digest}. What you typed is still here.`
    : 'No answer came from the server, so this may not be saved. What you typed is still here: wait a moment and send it again.';
}

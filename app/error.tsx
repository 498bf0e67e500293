'use client';
import { Button, ButtonLink } from './_ui/Button';
import { Page, PageHeader } from './_ui/Page';

/** Shown when a page fails. `digest` is the number under which the server logged the error. */
export default function ErrorPage({ error, reset }: { error: Error & { digest?: string }; reset: () => void }) {
  return (
    <Page>
      <PageHeader
        title="This page could not be made"
        lead="The fault is ours and has been written down. What you had already saved or sent is safe."
      />
      <p>
        Often it helps to try once more. If it fails again, tell your instructor the time and this number
        {error.digest ? (
          <>
            : <code>{error.digest}</code>
          </>
        ) : (
          ' (none was given)'
        )}
        .
      </p>
      <div className="actions">
        <Button kind="main" onClick={reset}>
          Try again
        </Button>
        <ButtonLink href="/">To the first page</ButtonLink>
      </div>
    </Page>
  );
}

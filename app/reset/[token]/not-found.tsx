import { ButtonLink } from '@/app/_ui/Button';
import { Page, PageHeader } from '@/app/_ui/Page';

/** A password link that has expired, was used or was mistyped. */
export default function PasswordLinkEnded() {
  return (
    <Page>
      <PageHeader
        title="This link no longer works"
        lead="A link for a new password works once, for a limited time. This one has expired or been used, or part of it is missing."
      />
      <p>If you have set your new password, sign in with it. Otherwise ask for another link.</p>
      <div className="actions">
        <ButtonLink href="/sign-in" kind="main">
          Sign in
        </ButtonLink>
        <ButtonLink href="/sign-in/forgotten">Forgotten your password?</ButtonLink>
      </div>
    </Page>
  );
}

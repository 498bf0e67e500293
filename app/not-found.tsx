import type { Metadata } from 'next';
import { ButtonLink } from './_ui/Button';
import { Page, PageHeader } from './_ui/Page';

export const metadata: Metadata = { title: 'Not here' };

/** The same answer for what does not exist and for what is another person's. */
export default function NotFound() {
  return (
    <Page>
      <PageHeader
        title="Page not found"
        lead="Either this address does not exist, or it is not open to the account you are signed in with."
      />
      <ul>
        <li>If you typed the address or followed an old link, look for a missing or a changed letter.</li>
        <li>
          If you were given the link, check that you’ve been added to the course and that you’re signed in with the
          right address.
        </li>
        <li>Other people’s work and unreleased notes or marks also lead here.</li>
      </ul>
      <div className="actions">
        <ButtonLink href="/" kind="main">
          To the first page
        </ButtonLink>
        <ButtonLink href="/sign-in">Sign in with another account</ButtonLink>
      </div>
    </Page>
  );
}

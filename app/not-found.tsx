import type { Metadata } from 'next';
import { ButtonLink } from './_ui/Button';
import { Page, PageHeader } from './_ui/Page';

export const metadata: Metadata = { title: 'Not here' };

/** The same answer for what does not exist and for what is not yours. */
export default function NotFound() {
  return (
    <Page>
      <PageHeader
        title="There is nothing here for you"
        lead="Either this address does not exist, or it is not open to the account you are signed in with."
      />
      <ul>
        <li>If you typed the address or followed an old link, look for a missing or a changed letter.</li>
        <li>
          If somebody gave you the link, ask whether you have been added to the course, and whether you are signed in
          with the right address.
        </li>
        <li>Work of other people, and notes and marks that are not yet released, are answered in this way too.</li>
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

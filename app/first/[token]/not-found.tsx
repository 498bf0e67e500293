import { ButtonLink } from '@/app/_ui/Button';
import { Page, PageHeader } from '@/app/_ui/Page';

/** The first instructor’s link, used or replaced by a newer one. */
export default function FirstLinkEnded() {
  return (
    <Page>
      <PageHeader
        title="This link no longer works"
        lead="The link for the first instructor works once, and only the newest one. This one has been used or replaced, or part of it is missing."
      />
      <p>The server prints a new link each time it starts, until there is an instructor.</p>
      <div className="actions">
        <ButtonLink href="/sign-in" kind="main">
          Sign in
        </ButtonLink>
      </div>
    </Page>
  );
}

import { ButtonLink } from '@/app/_ui/Button';
import { Page, PageHeader } from '@/app/_ui/Page';

/** A join link that has expired, was revoked or was mistyped. */
export default function JoinLinkEnded() {
  return (
    <Page>
      <PageHeader title="This link no longer works" lead="It has expired or been revoked, or part of it is missing." />
      <p>Ask your instructor for a new one. If you have already joined, sign in as usual.</p>
      <div className="actions">
        <ButtonLink href="/sign-in" kind="main">
          Sign in
        </ButtonLink>
      </div>
    </Page>
  );
}

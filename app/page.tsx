import { ButtonLink } from './_ui/Button';
import { Page } from './_ui/Page';
import { PageHeader } from './_ui/PageHeader';

export default function Home() {
  return (
    <Page>
      <PageHeader
        title="Spacing display type by eye"
        lead="A class spaces lines of large type, pair by pair. The teacher lays a reference beside them, notes go to single gaps, and the next round begins where the last one ended."
        actions={<ButtonLink kind="main" href="/sign-in">Sign in</ButtonLink>}
      />
    </Page>
  );
}

import { readSelf } from '@/lib/account/read-self';
import { forPage } from '@/lib/http/page';
import { FirstSteps } from './_home/first-steps';
import { ProofSheet } from './_home/proof-sheet';
import { Places } from './_home/places';
import { ButtonLink } from './_ui/Button';
import { Page } from './_ui/Page';
import { PageHeader } from './_ui/PageHeader';
import { Spaced } from './_ui/Spaced';

/** The first page: what this is, for people who are not signed in yet; the way to their courses for those who are. */
export default async function Home() {
  const self = await forPage(readSelf);
  return (
    <Page width="wide">
      <PageHeader
        title={<Spaced>Spacing display type by eye</Spaced>}
        lead="Between any two letters there is white. In large type it is seen before the letters are, and it is the setter’s to even out, gap by gap. Kerncrit is where a class learns to see it."
        actions={
          self ? (
            <ButtonLink kind="main" href="/courses">
              To your courses
            </ButtonLink>
          ) : (
            <ButtonLink kind="main" href="/sign-in">
              Sign in
            </ButtonLink>
          )
        }
      />
      <ProofSheet />
      <FirstSteps />
      <Places />
    </Page>
  );
}

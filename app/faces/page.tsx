import type { Metadata } from 'next';
import { listFaces, type CatalogueFace } from '@/lib/face/catalogue';
import { Notice, Page, PageHeader } from '../_ui/Page';
import { Spaced } from '../_ui/Spaced';
import { Family } from './family';

export const metadata: Metadata = { title: 'Faces and licences' };

/** Every installed family, with a sample, its weights and its licence. */
export default function Faces() {
  return (
    <Page>
      <PageHeader
        title={<Spaced>Faces and licences</Spaced>}
        lead="The faces that come with Kerncrit. All are under open licences that allow showing their outlines to a class and exporting what was set."
      />
      <Notice kind="caution" title="Faces that a school adds">
        A face needs a licence that allows its outlines to be sent to a class and exported. A desktop licence often does
        not. The licence is kept with the face; if it is in doubt, ask the foundry before the exercise is published.
      </Notice>
      {families().map((faces) => (
        <Family key={faces[0]!.source.package} faces={faces} />
      ))}
    </Page>
  );
}

/** Faces by the package they come in: one family, or one variable file of it. */
function families(): CatalogueFace[][] {
  const byPackage = new Map<string, CatalogueFace[]>();
  for (const face of listFaces())
    byPackage.set(face.source.package, [...(byPackage.get(face.source.package) ?? []), face]);
  return [...byPackage.values()];
}

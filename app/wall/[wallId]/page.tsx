import type { Metadata } from 'next';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { closeWallAction } from '@/app/wall/actions';
import { forPage } from '@/lib/http/page';
import { publicAddress } from '@/lib/http/public-address';
import { qrPath } from '@/lib/wall/pointing';
import { getWall } from '@/lib/wall/screen';
import { Projector } from '../_projector/projector';

export const metadata: Metadata = { title: 'The wall' };

/** For the projector: the proofs of one line, without names. */
export default async function WallPage({ params }: { params: Promise<{ wallId: string }> }) {
  const { wallId } = await params;
  const shown = await forPage(getWall, { wallId });
  const address = publicAddress(`/w/${shown.spelled}`);
  const text = shown.packs.at(-1)?.pack.text ?? '';
  const wall = {
    id: shown.id,
    text,
    title: `${text}, round ${shown.round.number} of ${shown.exercise.title}`,
    back: `/exercises/${shown.exercise.id}/rounds/${shown.round.number}/wall`,
    packs: shown.packs,
    state: shown.state,
    link: { address, ...qrPath(publicAddress(`/w/${shown.code}`)) },
  };
  return (
    <Projector
      wall={wall}
      close={
        <Form action={closeWallAction} label="Close the wall" inline>
          <input type="hidden" name="wallId" value={wallId} />
          <SubmitButton kind="usual" pending="Closing…">
            Close the wall and end its link
          </SubmitButton>
        </Form>
      }
    />
  );
}

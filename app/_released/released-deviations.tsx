import { Disclosure } from '@/app/_ui/Disclosure';
import { type GapMark, LineDrawing } from '@/app/_line/LineDrawing';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import type { DrawnLine } from '@/lib/release/draw-lines';
import { lettersOf } from '@/shared/critique/run';
import type { ReleasedLine } from '@/shared/schemas/release';
import { heldTogether, signed } from '@/shared/text/number';

type Props = { deviations: NonNullable<ReleasedLine['deviations']>; drawing: DrawnLine; letters: readonly string[] };

/** How the line stands beside the nearest reference, on request: in sentences, as wedges under the gaps, and pair by pair. */
export function ReleasedDeviations({ deviations, drawing, letters }: Props) {
  const outside = deviations.pairs.filter(({ within }) => !within);
  const sentences = deviations.findings.filter(({ weight }) => weight !== 'fact');
  return (
    <Disclosure
      summary={
        <>
          Beside the reference{deviations.author && <> by {deviations.author}</>}:{' '}
          {outside.length === 0
            ? 'every pair within tolerance'
            : `${outside.length} of ${deviations.pairs.length} pairs outside tolerance`}
        </>
      }
    >
      <SheetFrame ground={drawing.ground}>
        <LineDrawing pack={drawing.pack} spacing={drawing.spacing} marks={outside.map(markOf)} label={null} />
      </SheetFrame>
      {sentences.length > 0 && (
        <ul>
          {sentences.map((finding, index) => (
            <li key={index}>
              {heldTogether(finding.sentence)}
              {finding.comparison && <> That is {finding.comparison}.</>}
            </li>
          ))}
        </ul>
      )}
      {outside.length > 0 && (
        <p className="plain">
          {outside
            .map(({ index, rest }) => `${lettersOf(letters, { first: index, last: index })} ${signed(rest)}`)
            .join(', ')}{' '}
          (in 1/1000 em, after the tightness of the whole line is taken out)
        </p>
      )}
      {outside.some(({ reason }) => reason) && (
        <ul>
          {outside
            .filter(({ reason }) => reason)
            .map(({ index, reason }) => (
              <li key={index}>
                {lettersOf(letters, { first: index, last: index })}: “{reason}”
              </li>
            ))}
        </ul>
      )}
    </Disclosure>
  );
}

function markOf({ index, rest, tolerance }: Props['deviations']['pairs'][number]): GapMark {
  const share = Math.abs(rest) / Math.max(1, tolerance);
  return { gap: index, look: rest > 0 ? 'loose' : 'tight', strength: share > 3 ? 3 : share > 2 ? 2 : 1 };
}

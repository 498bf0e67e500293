import Link from 'next/link';
import { ButtonLink } from '@/app/_ui/Button';
import { Disclosure } from '@/app/_ui/Disclosure';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import type { SameText } from '@/lib/work/same-text';
import { placeLetters } from '@/shared/outline/place-letters';
import { counted } from '@/shared/text/number';
import { lineWords } from '@/shared/line/line-words';

export type ShownLine = SameText['lines'][number];
type Props = { exerciseId: string; line: ShownLine; all: readonly ShownLine[]; oneSize: boolean };

/** One of several spacings of a text, with links to its bench, and from it to another's. */
export function SameTextLine({ exerciseId, line, all, oneSize }: Props) {
  const { pack, spacing, size, ground, place } = line;
  const words = lineWords(line);
  const bench = (specimenId: string) => `/exercises/${exerciseId}/bench/${specimenId}`;
  const others = all.filter(({ versionId }) => versionId !== line.versionId);
  return (
    <li>
      <SheetFrame
        scrolls={!oneSize}
        ground={ground}
        caption={
          <>
            {place}. {words}. {line.touched ? 'As you have set it' : 'Untouched'}.
          </>
        }
      >
        <LineDrawing
          pack={pack}
          spacing={spacing}
          label={`${pack.text}, ${words}`}
          {...(oneSize ? { room: widest(all) * pack.unitsPerEm } : { size })}
        />
      </SheetFrame>
      <div className="actions">
        <ButtonLink small href={bench(line.specimenId)}>
          Space line {place}
        </ButtonLink>
        {line.touched && (
          <Disclosure
            summary={
              <>
                Start from this one<span className="visually-hidden"> (line {place})</span>
              </>
            }
          >
            <p className="hint">
              Its offsets and tracking are offered on the bench of the line you choose, drawn under that line. Nothing
              is replaced until you take them there, and Undo brings yours back.
            </p>
            <ul>
              {others.map((other) => (
                <li key={other.versionId}>
                  <Link href={`${bench(other.specimenId)}?start=${line.specimenId}`}>
                    Line {other.place}: {lineWords(other)}
                  </Link>{' '}
                  ({difference(line, other)})
                </li>
              ))}
            </ul>
          </Disclosure>
        )}
      </div>
    </li>
  );
}

/** Width of the widest line in em, so that all share one scale. */
const widest = (lines: readonly ShownLine[]): number =>
  Math.max(...lines.map(({ pack, spacing }) => placeLetters(pack, spacing).width / pack.unitsPerEm));

/** What would be replaced there. */
function difference(from: ShownLine, to: ShownLine): string {
  const gaps = to.spacing.offsets.filter((offset, pair) => offset !== from.spacing.offsets[pair]).length;
  const tracking = to.spacing.tracking !== from.spacing.tracking;
  if (gaps === 0 && !tracking) return 'set alike already';
  const what =
    gaps === 0
      ? 'tracking differs'
      : `${counted(gaps, 'gap')}${tracking ? ' and tracking' : ''} ${gaps === 1 && !tracking ? 'differs' : 'differ'}`;
  return to.touched ? what : `${what}; still untouched`;
}

/** The address of the lines of one text; `oneSize` sets them all at one size. */
export const sameTextHref = (exerciseId: string, text: string, oneSize = false): string =>
  `/exercises/${exerciseId}/same-text?text=${encodeURIComponent(text)}${oneSize ? '&at=one-size' : ''}`;

import { Fragment } from 'react';
import { spaceHeading, type SpacedLetter } from '@/lib/face/space-heading';
import { classes } from './classes';

/** A large heading of ours, spaced by our own measure. Screen readers and search see plain text. */
export async function Spaced({ children }: { children: string }) {
  const words = await spacedOrPlain(children);
  if (!words) return children;
  return (
    <>
      <span className="visually-hidden">{children}</span>
      <span className="spaced" aria-hidden="true">
        {words.map((word, index) => (
          <Fragment key={index}>
            {index > 0 && ' '}
            <span className="spaced-word">
              {word.map((letter, place) => (
                <span key={place} className={classes(gapClass(letter.after))}>
                  {letter.cluster}
                </span>
              ))}
            </span>
          </Fragment>
        ))}
      </span>
    </>
  );
}

/** If a face can't be read the page still works: the browser sets the heading. */
async function spacedOrPlain(text: string): Promise<SpacedLetter[][] | null> {
  try {
    return await spaceHeading(text);
  } catch {
    return null;
  }
}

function gapClass(after: number): string | false {
  return after !== 0 && `gap-${after < 0 ? `m${-after}` : after}`;
}

import { useId, type ReactNode } from 'react';
import { classes } from './classes';

type Props = {
  caption: ReactNode;
  /** thead and tbody. Cells with figures take the class `number`. */
  children: ReactNode;
  narrow?: boolean;
  /** Keeps the caption for screen readers only, where a heading already says it. */
  captionHidden?: boolean;
};

/** A table that scrolls sideways on a narrow screen, also by keyboard. */
export function Table({ caption, children, narrow, captionHidden }: Props) {
  const id = useId();
  return (
    <div className="table-region" role="region" aria-labelledby={id} tabIndex={0}>
      <table className={classes('table', narrow && 'table-narrow')}>
        <caption id={id} className={classes(captionHidden && 'visually-hidden')}>
          {caption}
        </caption>
        {children}
      </table>
    </div>
  );
}

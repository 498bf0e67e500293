import Link from 'next/link';
import type { ComponentProps } from 'react';
import { classes } from './classes';

export type ButtonKind = 'main' | 'usual' | 'grave' | 'text';
type Variant = { kind?: ButtonKind; small?: boolean };

export function buttonClasses({ kind = 'usual', small }: Variant, extra?: string): string | undefined {
  return classes('button', kind !== 'usual' && `button-${kind}`, small && 'button-small', extra);
}

/** A button that does something. One `main` button a page; `grave` for what deletes or withdraws. */
export function Button({ kind, small, className, type = 'button', ...rest }: ComponentProps<'button'> & Variant) {
  return <button type={type} className={buttonClasses({ kind, small }, className)} {...rest} />;
}

/** A link that looks like a button: it goes somewhere. `plainLink` for files and routes outside the pages. */
export function ButtonLink({
  kind,
  small,
  className,
  plainLink,
  ...rest
}: ComponentProps<typeof Link> & Variant & { plainLink?: boolean }) {
  const classNames = buttonClasses({ kind, small }, className);
  if (plainLink) {
    const { href, children, download } = rest;
    return (
      <a className={classNames} href={String(href)} download={download}>
        {children}
      </a>
    );
  }
  return <Link className={classNames} {...rest} />;
}

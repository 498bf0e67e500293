'use client';
import { useId, useRef, type ReactNode } from 'react';
import { Button, ButtonLink, type ButtonKind } from './Button';

type Props = {
  /** The label of the button that asks, e.g. 'Delete this exercise…'. */
  label: string;
  title: string;
  /** What will happen and what will not. */
  children: ReactNode;
  /** The form (with its SubmitButton) that does it. */
  form: ReactNode;
  /** The same question on a page of its own; without JavaScript the button is a link to it. */
  href: string;
  kind?: ButtonKind;
};

/** Asks for confirmation. With scripts it is a native dialog; without, the link leads to `href`. */
export function ConfirmDialog({ label, title, children, form, href, kind = 'grave' }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  return (
    <>
      <ButtonLink
        href={href}
        kind={kind}
        role="button"
        aria-haspopup="dialog"
        onClick={(event) => {
          event.preventDefault();
          dialog.current?.showModal();
        }}
        onKeyDown={(event) => {
          if (event.key === ' ') {
            event.preventDefault();
            dialog.current?.showModal();
          }
        }}
      >
        {label}
      </ButtonLink>
      <dialog className="dialog" ref={dialog} aria-labelledby={id}>
        <h2 id={id}>{title}</h2>
        <div className="stack">{children}</div>
        <div className="actions">
          {form}
          <Button onClick={() => dialog.current?.close()}>Leave it as it is</Button>
        </div>
      </dialog>
    </>
  );
}

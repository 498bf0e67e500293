'use client';
import { useContext, useState } from 'react';
import { Button } from './Button';
import { fieldId } from './Field';
import { FormContext } from './form-context';

type Props = { name: string; label: string; hint: string };

/** A link that the form around it has just made, to be copied; it is shown only once. Empty before that. */
export function ShownLink({ name, label, hint }: Props) {
  const path = useContext(FormContext).shown?.[name];
  const [message, setMessage] = useState('');
  if (path === undefined) return null;
  const id = `${fieldId(name)}-shown`;

  async function copy() {
    try {
      await navigator.clipboard.writeText(path!);
      setMessage('Copied.');
    } catch {
      setMessage('The browser did not allow copying: choose the text and copy it yourself.');
    }
  }

  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        readOnly
        value={path}
        onFocus={(event) => event.currentTarget.select()}
        aria-describedby={`${id}-hint`}
      />
      <p className="hint" id={`${id}-hint`}>
        {hint}
      </p>
      <div className="actions">
        <Button small onClick={() => void copy()}>
          Copy
        </Button>
        <span role="status">{message}</span>
      </div>
    </div>
  );
}

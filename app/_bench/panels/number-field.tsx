import { useId, useState, type Ref } from 'react';
import { parseOffset } from '@/shared/editing/parse-offset';
import { numberText } from '@/shared/text/number';
import styles from '../bench.module.css';

type Props = {
  label: string;
  /** null shows an empty field, e.g. for a run whose offsets differ. */
  value: number | null;
  onSet: (value: number) => void;
  /** Where the focus goes on Enter, after the number is accepted. */
  onEnter?: () => void;
  least?: number;
  /** For a field that may be empty; without it an empty field is an error. */
  onEmpty?: () => void;
  placeholder?: string;
  ref?: Ref<HTMLInputElement>;
};

/**
 * A whole number, accepted on Enter or on leaving the field. An invalid one stays in the field with the reason beside
 * it.
 */
export function NumberField({ label, value, onSet, onEnter, least, onEmpty, placeholder, ref }: Props) {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [error, setError] = useState<string | null>(null);

  function take(): boolean {
    if (typed === null) return true;
    const parsed = onEmpty && typed.trim() === '' ? null : parseOffset(typed, least);
    if (parsed && 'error' in parsed) {
      setError(parsed.error);
      return false;
    }
    setTyped(null);
    setError(null);
    if (parsed) onSet(parsed.value);
    else onEmpty?.();
    return true;
  }

  return (
    <span className={styles.numberField}>
      <label htmlFor={id}>{label}</label>
      <input
        ref={ref}
        id={id}
        className={styles.number}
        type="text"
        inputMode="text"
        autoComplete="off"
        enterKeyHint="done"
        placeholder={placeholder}
        value={typed ?? (value === null ? '' : numberText(value))}
        aria-invalid={error !== null}
        aria-describedby={error ? `${id}-error` : undefined}
        onFocus={(event) => event.currentTarget.select()}
        onChange={(event) => setTyped(event.currentTarget.value)}
        onBlur={take}
        onKeyDown={(event) => {
          if (event.key === 'Enter') {
            event.preventDefault();
            if (take()) onEnter?.();
          } else if (event.key === 'Escape') {
            setTyped(null);
            setError(null);
            onEnter?.();
          }
        }}
      />
      {error && (
        <span id={`${id}-error`} role="alert" className={styles.fieldError}>
          {error}
        </span>
      )}
    </span>
  );
}

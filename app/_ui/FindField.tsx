import { Button } from './Button';

type Props = { label: string; find: string; action: string; hint: string };

/** Looks for a name in a list that is longer than a page; works without JavaScript, and what was looked for stays in the address. */
export function FindField({ label, find, action, hint }: Props) {
  return (
    <search>
      <form action={action} method="get" className="form form-inline" aria-label={label}>
        <div className="field">
          <label htmlFor="field-find">{label}</label>
          <input
            type="search"
            id="field-find"
            name="find"
            defaultValue={find}
            autoComplete="off"
            aria-describedby="field-find-hint"
          />
          <p className="hint" id="field-find-hint">
            {hint}
          </p>
        </div>
        <Button type="submit" small>
          Find
        </Button>
      </form>
    </search>
  );
}

import { Section } from './Page';

type Props = { groups: readonly { text?: string; members: readonly string[] }[] };

/** Spacings that agree in every number, shown as a plain fact. */
export function EqualSpacings({ groups }: Props) {
  if (groups.length === 0) return null;
  return (
    <Section
      title="Identical spacings"
      lead="These spacings are the same in every number. That proves nothing: students may sit together, start from the same draft, or agree."
    >
      <ul>
        {groups.map(({ text, members }, index) => (
          <li key={index}>
            {text && `${text}: `}
            {members.join(', ')}
          </li>
        ))}
      </ul>
    </Section>
  );
}

import { Section } from './Page';

type Props = { groups: readonly { text?: string; members: readonly string[] }[] };

/** Settings that are the same in every number, shown as the fact it is. */
export function EqualSpacings({ groups }: Props) {
  if (groups.length === 0) return null;
  return (
    <Section
      title="Equal settings"
      lead="These settings are the same in every number. That is a fact and nothing more: people sit together, start from one another’s drafts, or agree."
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

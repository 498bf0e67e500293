import { Select } from '../_ui/Select';

/** The time zone of the course's dates, by continent. */
export function TimeZoneField({ timeZones, chosen }: { timeZones: readonly string[]; chosen?: string | undefined }) {
  const choices = timeZones.map((zone) => {
    const [group, ...rest] = zone.split('/');
    return rest.length === 0
      ? { value: zone, label: zone, group: 'Everywhere' }
      : { value: zone, label: rest.join(' / ').replaceAll('_', ' '), group: group! };
  });
  return (
    <Select
      name="timeZone"
      label="Time zone"
      hint="All dates in this course use this time zone."
      choices={choices}
      placeholder="Choose…"
      defaultValue={chosen}
    />
  );
}

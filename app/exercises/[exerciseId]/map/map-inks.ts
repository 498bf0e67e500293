'use client';

/** Colours of the map as the page has them now, light or dark: read from a probe of each role, since a canvas knows no tokens. */
export type MapInks = {
  ground: string;
  raised: string;
  ink: string;
  quiet: string;
  rule: string;
  edge: string;
  accent: string;
  wide: string;
  tight: string;
  /** Of the letters, as a font-family list. */ family: string;
};

const roles: Record<Exclude<keyof MapInks, 'family'>, string> = {
  ground: '--ground',
  raised: '--raised',
  ink: '--ink',
  quiet: '--quiet-ink',
  rule: '--rule',
  edge: '--edge',
  accent: '--accent',
  wide: '--warm-white',
  tight: '--cool-white',
};

export function mapInks(beside: Element): MapInks {
  const probes = Object.entries(roles).map(([role, token]) => {
    const probe = document.createElement('span');
    probe.hidden = true;
    probe.style.color = `var(${token})`;
    return { role, probe };
  });
  // All are put in before the first is read, so that the page's styles are worked out once.
  beside.append(...probes.map(({ probe }) => probe));
  const inks = Object.fromEntries(probes.map(({ role, probe }) => [role, getComputedStyle(probe).color])) as Record<
    keyof typeof roles,
    string
  >;
  probes.forEach(({ probe }) => probe.remove());
  return { ...inks, family: getComputedStyle(beside).fontFamily };
}

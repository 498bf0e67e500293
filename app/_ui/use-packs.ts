'use client';
import { useEffect, useState } from 'react';
import type { WallPack } from '@/shared/schemas/wall';

/**
 * The packs of a wall's lines, by version of the specimen; one added since the page was opened is fetched from
 * `address`.
 */
export function usePacks(
  address: string,
  first: readonly WallPack[],
  versions: readonly number[],
): ReadonlyMap<number, WallPack> {
  const [packs, setPacks] = useState<ReadonlyMap<number, WallPack>>(() => byVersion(first));
  const missing = versions.some((version) => !packs.has(version));
  useEffect(() => {
    if (!missing) return;
    let wanted = true;
    void fetch(address)
      .then((answer) => (answer.ok ? answer.json() : null))
      .then((found: { packs: WallPack[] } | null) => {
        if (wanted && found) setPacks(byVersion(found.packs));
      })
      .catch(() => undefined);
    return () => {
      wanted = false;
    };
  }, [missing, address]);
  return packs;
}

const byVersion = (packs: readonly WallPack[]) => new Map(packs.map((pack) => [pack.version, pack]));

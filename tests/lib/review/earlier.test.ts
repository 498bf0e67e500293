import { beforeAll, expect, it } from 'vitest';
import type { Caller } from '@/lib/access/caller';
import { getProofLine } from '@/lib/review/desk';
import { newId } from '@/lib/data/ids';
import { fillWorld, type Ids } from '@/tests/access/fill-world';
import { describeOnBothDatabases } from '@/tests/fixtures/databases';

const now = new Date('2027-03-08T10:00:00Z');

describeOnBothDatabases('hints across specimens of one text', (suite) => {
  let ids: Ids;
  let marker: Caller;
  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
    marker = { kind: 'person', userId: ids.users.assistant, sessionId: ids.sessions.assistant, address: '192.0.2.1' };
  });

  it('are none where the text stands alone', async () => {
    expect((await getProofLine(marker, { proof: ids.proof, specimenId: ids.specimen }, { now })).across).toEqual([]);
  });

  it('say that a line set far looser at a large size goes against designers’ own data', async () => {
    // The same text at 24 px in the same proof, untouched; the one at 96 px set 60 wider.
    const [specimen, version] = [newId(), newId()];
    await suite.db.specimen.create({ data: { id: specimen, exerciseId: ids.exercise, position: 2, createdAt: now } });
    await suite.db.specimenVersion.create({
      data: {
        id: version,
        specimenId: specimen,
        number: 1,
        text: 'HO',
        packSha: 'a'.repeat(64),
        size: 24,
        unit: 'px',
        ground: 'light',
        createdAt: now,
      },
    });
    await suite.db.proofItem.create({
      data: { id: newId(), proofId: ids.proof, specimenVersionId: version, tracking: 0, offsets: '[0]' },
    });
    await suite.db.proofItem.update({ where: { id: ids.proofItem }, data: { tracking: 60 } });
    const { across } = await getProofLine(marker, { proof: ids.proof, specimenId: ids.specimen }, { now });
    expect(across).toHaveLength(1);
    expect(across[0]).toMatch(/From 24.px to 96.px this line was set .* wider/);
    expect(across[0]).toMatch(/five such faces/);
  });
});

-- Columns are added and nothing is made anew: on SQLite a column with a fixed default needs no other table.

-- AlterTable
ALTER TABLE "MarkTask" ADD COLUMN "roundId" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "Member" ADD COLUMN "listName" TEXT NOT NULL DEFAULT '';

-- What is there already. Accents stay until a name is next written; the order of a list is all that depends on it.
UPDATE "MarkTask" SET "roundId" = (SELECT p."roundId" FROM "Proof" p WHERE p."id" = "MarkTask"."proofId");
UPDATE "Member" SET "listName" = LOWER(COALESCE((SELECT u."name" FROM "User" u WHERE u."id" = "Member"."userId"), ''));

-- CreateIndex
CREATE INDEX "MarkTask_roundId_slot_state_alias_idx" ON "MarkTask"("roundId", "slot", "state", "alias");

-- CreateIndex
CREATE INDEX "Member_courseId_role_listName_id_removedAt_idx" ON "Member"("courseId", "role", "listName", "id", "removedAt");

-- CreateIndex
CREATE INDEX "Member_courseId_removedAt_idx" ON "Member"("courseId", "removedAt");

-- CreateIndex
CREATE INDEX "Proof_roundId_receivedAt_idx" ON "Proof"("roundId", "receivedAt");

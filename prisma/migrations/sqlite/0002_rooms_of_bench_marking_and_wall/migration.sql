-- CreateTable
CREATE TABLE "PracticeResult" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "userId" TEXT NOT NULL,
    "requestKey" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "size" REAL NOT NULL,
    "threshold" REAL NOT NULL,
    "payload" TEXT NOT NULL DEFAULT '{}',
    "at" DATETIME NOT NULL,
    CONSTRAINT "PracticeResult_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Demonstration" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "specimenVersionId" TEXT NOT NULL,
    "authorId" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "steps" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL,
    "shownAt" DATETIME,
    "removedAt" DATETIME,
    "version" INTEGER NOT NULL DEFAULT 0,
    CONSTRAINT "Demonstration_specimenVersionId_fkey" FOREIGN KEY ("specimenVersionId") REFERENCES "SpecimenVersion" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Demonstration_authorId_fkey" FOREIGN KEY ("authorId") REFERENCES "Member" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "MarkSkip" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "proofId" TEXT NOT NULL,
    "memberId" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    CONSTRAINT "MarkSkip_proofId_fkey" FOREIGN KEY ("proofId") REFERENCES "Proof" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "MarkSkip_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Wall" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "roundId" TEXT NOT NULL,
    "specimenId" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "settings" TEXT NOT NULL DEFAULT '{}',
    "openedById" TEXT,
    "openedAt" DATETIME NOT NULL,
    "closedAt" DATETIME,
    "version" INTEGER NOT NULL DEFAULT 0,
    CONSTRAINT "Wall_roundId_fkey" FOREIGN KEY ("roundId") REFERENCES "Round" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Wall_specimenId_fkey" FOREIGN KEY ("specimenId") REFERENCES "Specimen" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Wall_openedById_fkey" FOREIGN KEY ("openedById") REFERENCES "Member" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "WallPoint" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "wallId" TEXT NOT NULL,
    "phone" TEXT NOT NULL,
    "proofItemId" TEXT NOT NULL,
    "pair" INTEGER NOT NULL,
    "at" DATETIME NOT NULL,
    CONSTRAINT "WallPoint_wallId_fkey" FOREIGN KEY ("wallId") REFERENCES "Wall" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "WallPoint_proofItemId_fkey" FOREIGN KEY ("proofItemId") REFERENCES "ProofItem" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- AlterTable: SQLite can add this column in place, which keeps what refers to a round out of harm's way.
ALTER TABLE "Round" ADD COLUMN "secondMarker" TEXT NOT NULL DEFAULT '{}';

-- CreateIndex
CREATE INDEX "PracticeResult_userId_at_idx" ON "PracticeResult"("userId", "at");

-- CreateIndex
CREATE UNIQUE INDEX "PracticeResult_userId_requestKey_key" ON "PracticeResult"("userId", "requestKey");

-- CreateIndex
CREATE INDEX "Demonstration_specimenVersionId_idx" ON "Demonstration"("specimenVersionId");

-- CreateIndex
CREATE INDEX "MarkSkip_memberId_idx" ON "MarkSkip"("memberId");

-- CreateIndex
CREATE UNIQUE INDEX "MarkSkip_proofId_memberId_key" ON "MarkSkip"("proofId", "memberId");

-- CreateIndex
CREATE UNIQUE INDEX "Wall_code_key" ON "Wall"("code");

-- CreateIndex
CREATE INDEX "Wall_roundId_idx" ON "Wall"("roundId");

-- CreateIndex
CREATE INDEX "Wall_specimenId_idx" ON "Wall"("specimenId");

-- CreateIndex
CREATE INDEX "WallPoint_proofItemId_idx" ON "WallPoint"("proofItemId");

-- CreateIndex
CREATE UNIQUE INDEX "WallPoint_wallId_phone_key" ON "WallPoint"("wallId", "phone");

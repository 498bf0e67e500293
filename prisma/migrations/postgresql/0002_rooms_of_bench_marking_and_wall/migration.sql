-- AlterTable
ALTER TABLE "Round" ADD COLUMN     "secondMarker" TEXT NOT NULL DEFAULT '{}';

-- CreateTable
CREATE TABLE "PracticeResult" (
    "id" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "requestKey" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "size" DOUBLE PRECISION NOT NULL,
    "threshold" DOUBLE PRECISION NOT NULL,
    "payload" TEXT NOT NULL DEFAULT '{}',
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "PracticeResult_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Demonstration" (
    "id" TEXT NOT NULL,
    "specimenVersionId" TEXT NOT NULL,
    "authorId" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "steps" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "shownAt" TIMESTAMP(3),
    "removedAt" TIMESTAMP(3),
    "version" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "Demonstration_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "MarkSkip" (
    "id" TEXT NOT NULL,
    "proofId" TEXT NOT NULL,
    "memberId" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "MarkSkip_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Wall" (
    "id" TEXT NOT NULL,
    "roundId" TEXT NOT NULL,
    "specimenId" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "settings" TEXT NOT NULL DEFAULT '{}',
    "openedById" TEXT,
    "openedAt" TIMESTAMP(3) NOT NULL,
    "closedAt" TIMESTAMP(3),
    "version" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "Wall_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "WallPoint" (
    "id" TEXT NOT NULL,
    "wallId" TEXT NOT NULL,
    "phone" TEXT NOT NULL,
    "proofItemId" TEXT NOT NULL,
    "pair" INTEGER NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "WallPoint_pkey" PRIMARY KEY ("id")
);

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

-- AddForeignKey
ALTER TABLE "PracticeResult" ADD CONSTRAINT "PracticeResult_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Demonstration" ADD CONSTRAINT "Demonstration_specimenVersionId_fkey" FOREIGN KEY ("specimenVersionId") REFERENCES "SpecimenVersion"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Demonstration" ADD CONSTRAINT "Demonstration_authorId_fkey" FOREIGN KEY ("authorId") REFERENCES "Member"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MarkSkip" ADD CONSTRAINT "MarkSkip_proofId_fkey" FOREIGN KEY ("proofId") REFERENCES "Proof"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MarkSkip" ADD CONSTRAINT "MarkSkip_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Wall" ADD CONSTRAINT "Wall_roundId_fkey" FOREIGN KEY ("roundId") REFERENCES "Round"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Wall" ADD CONSTRAINT "Wall_specimenId_fkey" FOREIGN KEY ("specimenId") REFERENCES "Specimen"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Wall" ADD CONSTRAINT "Wall_openedById_fkey" FOREIGN KEY ("openedById") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "WallPoint" ADD CONSTRAINT "WallPoint_wallId_fkey" FOREIGN KEY ("wallId") REFERENCES "Wall"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "WallPoint" ADD CONSTRAINT "WallPoint_proofItemId_fkey" FOREIGN KEY ("proofItemId") REFERENCES "ProofItem"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- CreateTable
CREATE TABLE "RoundSection" (
    "id" TEXT NOT NULL,
    "roundId" TEXT NOT NULL,
    "sectionId" TEXT NOT NULL,
    "opensLocal" TEXT,
    "opensAt" TIMESTAMP(3),
    "dueLocal" TEXT,
    "dueAt" TIMESTAMP(3),
    "markingStartedAt" TIMESTAMP(3),
    "version" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "RoundSection_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "RoundSection_sectionId_idx" ON "RoundSection"("sectionId");

-- CreateIndex
CREATE UNIQUE INDEX "RoundSection_roundId_sectionId_key" ON "RoundSection"("roundId", "sectionId");

-- AddForeignKey
ALTER TABLE "RoundSection" ADD CONSTRAINT "RoundSection_roundId_fkey" FOREIGN KEY ("roundId") REFERENCES "Round"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RoundSection" ADD CONSTRAINT "RoundSection_sectionId_fkey" FOREIGN KEY ("sectionId") REFERENCES "Section"("id") ON DELETE CASCADE ON UPDATE CASCADE;

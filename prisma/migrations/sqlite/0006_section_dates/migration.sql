-- CreateTable
CREATE TABLE "RoundSection" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "roundId" TEXT NOT NULL,
    "sectionId" TEXT NOT NULL,
    "opensLocal" TEXT,
    "opensAt" DATETIME,
    "dueLocal" TEXT,
    "dueAt" DATETIME,
    "markingStartedAt" DATETIME,
    "version" INTEGER NOT NULL DEFAULT 0,
    CONSTRAINT "RoundSection_roundId_fkey" FOREIGN KEY ("roundId") REFERENCES "Round" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "RoundSection_sectionId_fkey" FOREIGN KEY ("sectionId") REFERENCES "Section" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "RoundSection_sectionId_idx" ON "RoundSection"("sectionId");

-- CreateIndex
CREATE UNIQUE INDEX "RoundSection_roundId_sectionId_key" ON "RoundSection"("roundId", "sectionId");

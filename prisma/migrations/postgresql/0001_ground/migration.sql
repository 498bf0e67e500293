-- CreateTable
CREATE TABLE "User" (
    "id" TEXT NOT NULL,
    "emailNorm" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "passwordHash" TEXT,
    "mayCreateCourses" BOOLEAN NOT NULL DEFAULT false,
    "preferences" TEXT NOT NULL DEFAULT '{}',
    "createdAt" TIMESTAMP(3) NOT NULL,
    "erasedAt" TIMESTAMP(3),

    CONSTRAINT "User_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Identity" (
    "id" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "issuer" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Identity_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "AuthSession" (
    "id" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "expiresAt" TIMESTAMP(3) NOT NULL,
    "lastSeenAt" TIMESTAMP(3) NOT NULL,
    "revokedAt" TIMESTAMP(3),

    CONSTRAINT "AuthSession_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "OneTimeLink" (
    "id" TEXT NOT NULL,
    "purpose" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "userId" TEXT,
    "createdById" TEXT,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "expiresAt" TIMESTAMP(3) NOT NULL,
    "usedAt" TIMESTAMP(3),

    CONSTRAINT "OneTimeLink_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "RateLimit" (
    "key" TEXT NOT NULL,
    "points" INTEGER NOT NULL,
    "expire" TIMESTAMP(3),

    CONSTRAINT "RateLimit_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "Installation" (
    "key" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "setAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Installation_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "Course" (
    "id" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "timeZone" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "settings" TEXT NOT NULL DEFAULT '{}',
    "retainUntil" TEXT,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "archivedAt" TIMESTAMP(3),
    "version" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "Course_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Section" (
    "id" TEXT NOT NULL,
    "courseId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Section_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Member" (
    "id" TEXT NOT NULL,
    "courseId" TEXT NOT NULL,
    "userId" TEXT,
    "role" TEXT NOT NULL,
    "sectionId" TEXT,
    "accommodations" TEXT NOT NULL DEFAULT '{}',
    "joinedAt" TIMESTAMP(3) NOT NULL,
    "removedAt" TIMESTAMP(3),
    "version" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "Member_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "JoinLink" (
    "id" TEXT NOT NULL,
    "courseId" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "sectionId" TEXT,
    "createdById" TEXT,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "expiresAt" TIMESTAMP(3) NOT NULL,
    "revokedAt" TIMESTAMP(3),

    CONSTRAINT "JoinLink_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ExternalRef" (
    "id" TEXT NOT NULL,
    "issuer" TEXT NOT NULL,
    "deployment" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "externalId" TEXT NOT NULL,
    "localId" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "ExternalRef_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Asset" (
    "sha256" TEXT NOT NULL,
    "bytes" BYTEA NOT NULL,
    "mime" TEXT NOT NULL,
    "name" TEXT NOT NULL DEFAULT '',
    "licence" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Asset_pkey" PRIMARY KEY ("sha256")
);

-- CreateTable
CREATE TABLE "Face" (
    "id" TEXT NOT NULL,
    "assetSha" TEXT NOT NULL,
    "index" INTEGER NOT NULL,
    "axes" TEXT NOT NULL,
    "family" TEXT NOT NULL,
    "style" TEXT NOT NULL,
    "weight" INTEGER NOT NULL,
    "details" TEXT NOT NULL DEFAULT '{}',
    "installed" BOOLEAN NOT NULL DEFAULT false,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Face_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CourseFace" (
    "id" TEXT NOT NULL,
    "courseId" TEXT NOT NULL,
    "faceId" TEXT NOT NULL,
    "addedById" TEXT,
    "licenceNote" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "removedAt" TIMESTAMP(3),

    CONSTRAINT "CourseFace_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Pack" (
    "sha256" TEXT NOT NULL,
    "format" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "faceId" TEXT,
    "assetSha" TEXT,
    "payload" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Pack_pkey" PRIMARY KEY ("sha256")
);

-- CreateTable
CREATE TABLE "Exercise" (
    "id" TEXT NOT NULL,
    "courseId" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "brief" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "settings" TEXT NOT NULL DEFAULT '{}',
    "position" INTEGER NOT NULL DEFAULT 0,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "publishedAt" TIMESTAMP(3),
    "closedAt" TIMESTAMP(3),
    "removedAt" TIMESTAMP(3),
    "version" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "Exercise_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Round" (
    "id" TEXT NOT NULL,
    "exerciseId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "title" TEXT NOT NULL DEFAULT '',
    "opensLocal" TEXT,
    "opensAt" TIMESTAMP(3),
    "dueLocal" TEXT,
    "dueAt" TIMESTAMP(3),
    "lateRule" TEXT NOT NULL DEFAULT '{}',
    "state" TEXT NOT NULL,
    "markingStartedAt" TIMESTAMP(3),
    "version" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "Round_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "RoundExtension" (
    "id" TEXT NOT NULL,
    "roundId" TEXT NOT NULL,
    "memberId" TEXT NOT NULL,
    "dueLocal" TEXT NOT NULL,
    "dueAt" TIMESTAMP(3) NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "RoundExtension_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "RoundChoice" (
    "id" TEXT NOT NULL,
    "roundId" TEXT NOT NULL,
    "memberId" TEXT NOT NULL,
    "proofId" TEXT NOT NULL,
    "chosenById" TEXT,
    "chosenAt" TIMESTAMP(3) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "RoundChoice_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Specimen" (
    "id" TEXT NOT NULL,
    "exerciseId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "retiredAt" TIMESTAMP(3),

    CONSTRAINT "Specimen_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SpecimenVersion" (
    "id" TEXT NOT NULL,
    "specimenId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "text" TEXT NOT NULL,
    "packSha" TEXT NOT NULL,
    "size" DOUBLE PRECISION NOT NULL,
    "unit" TEXT NOT NULL,
    "ground" TEXT NOT NULL,
    "details" TEXT NOT NULL DEFAULT '{}',
    "previousId" TEXT,
    "pairMap" TEXT,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "SpecimenVersion_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Criterion" (
    "id" TEXT NOT NULL,
    "exerciseId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "retiredAt" TIMESTAMP(3),

    CONSTRAINT "Criterion_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CriterionVersion" (
    "id" TEXT NOT NULL,
    "criterionId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "description" TEXT NOT NULL DEFAULT '',
    "basis" TEXT NOT NULL DEFAULT 'judgement',
    "weight" DOUBLE PRECISION NOT NULL,
    "levels" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "CriterionVersion_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Reference" (
    "id" TEXT NOT NULL,
    "specimenVersionId" TEXT NOT NULL,
    "authorId" TEXT NOT NULL,
    "slot" INTEGER NOT NULL,
    "tracking" INTEGER NOT NULL,
    "offsets" TEXT NOT NULL,
    "tolerances" TEXT NOT NULL,
    "reasons" TEXT NOT NULL,
    "carriedFromId" TEXT,
    "updatedAt" TIMESTAMP(3) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "Reference_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ReferenceSet" (
    "id" TEXT NOT NULL,
    "exerciseId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "madeById" TEXT,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "ReferenceSet_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ReferenceSetItem" (
    "id" TEXT NOT NULL,
    "setId" TEXT NOT NULL,
    "specimenVersionId" TEXT NOT NULL,
    "authorId" TEXT NOT NULL,
    "slot" INTEGER NOT NULL,
    "tracking" INTEGER NOT NULL,
    "offsets" TEXT NOT NULL,
    "tolerances" TEXT NOT NULL,
    "reasons" TEXT NOT NULL,

    CONSTRAINT "ReferenceSetItem_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Draft" (
    "id" TEXT NOT NULL,
    "memberId" TEXT NOT NULL,
    "specimenVersionId" TEXT NOT NULL,
    "purpose" TEXT NOT NULL,
    "tracking" INTEGER NOT NULL,
    "offsets" TEXT NOT NULL,
    "updatedAt" TIMESTAMP(3) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "Draft_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "DraftChange" (
    "id" TEXT NOT NULL,
    "draftId" TEXT NOT NULL,
    "clientId" TEXT NOT NULL,
    "seq" INTEGER NOT NULL,
    "baseVersion" INTEGER NOT NULL,
    "tracking" INTEGER NOT NULL,
    "offsets" TEXT NOT NULL,
    "receivedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "DraftChange_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Proof" (
    "id" TEXT NOT NULL,
    "roundId" TEXT NOT NULL,
    "memberId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "requestKey" TEXT NOT NULL,
    "reasoning" TEXT NOT NULL,
    "receivedAt" TIMESTAMP(3) NOT NULL,
    "zoom" DOUBLE PRECISION NOT NULL DEFAULT 1,

    CONSTRAINT "Proof_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ProofItem" (
    "id" TEXT NOT NULL,
    "proofId" TEXT NOT NULL,
    "specimenVersionId" TEXT NOT NULL,
    "tracking" INTEGER NOT NULL,
    "offsets" TEXT NOT NULL,

    CONSTRAINT "ProofItem_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Measurement" (
    "id" TEXT NOT NULL,
    "proofItemId" TEXT NOT NULL,
    "engine" INTEGER NOT NULL,
    "payload" TEXT NOT NULL,
    "measuredAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Measurement_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Comparison" (
    "id" TEXT NOT NULL,
    "proofItemId" TEXT NOT NULL,
    "referenceSetId" TEXT NOT NULL,
    "engine" INTEGER NOT NULL,
    "payload" TEXT NOT NULL,
    "comparedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Comparison_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Summary" (
    "id" TEXT NOT NULL,
    "roundId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "basis" TEXT NOT NULL,
    "payload" TEXT NOT NULL,
    "madeAt" TIMESTAMP(3) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "Summary_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "MarkTask" (
    "id" TEXT NOT NULL,
    "proofId" TEXT NOT NULL,
    "slot" TEXT NOT NULL,
    "markerId" TEXT,
    "alias" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "leaseUntil" TIMESTAMP(3),
    "doneAt" TIMESTAMP(3),
    "createdAt" TIMESTAMP(3) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "MarkTask_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Mark" (
    "id" TEXT NOT NULL,
    "taskId" TEXT NOT NULL,
    "criterionVersionId" TEXT NOT NULL,
    "level" INTEGER,
    "updatedAt" TIMESTAMP(3) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "Mark_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "MarkEvent" (
    "id" TEXT NOT NULL,
    "markId" TEXT NOT NULL,
    "whoId" TEXT,
    "why" TEXT NOT NULL,
    "before" INTEGER,
    "after" INTEGER,
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "MarkEvent_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Note" (
    "id" TEXT NOT NULL,
    "proofItemId" TEXT NOT NULL,
    "requestKey" TEXT NOT NULL,
    "fromPair" INTEGER,
    "toPair" INTEGER,
    "taskId" TEXT,
    "authorId" TEXT,
    "suggestion" TEXT,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "settledAt" TIMESTAMP(3),
    "removedAt" TIMESTAMP(3),
    "version" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "Note_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "NoteEntry" (
    "id" TEXT NOT NULL,
    "noteId" TEXT NOT NULL,
    "seq" INTEGER NOT NULL,
    "authorId" TEXT,
    "body" TEXT NOT NULL,
    "replacesSeq" INTEGER,
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "NoteEntry_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "StockNote" (
    "id" TEXT NOT NULL,
    "courseId" TEXT NOT NULL,
    "authorId" TEXT,
    "shared" BOOLEAN NOT NULL DEFAULT false,
    "fault" TEXT NOT NULL DEFAULT '',
    "body" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "removedAt" TIMESTAMP(3),
    "version" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "StockNote_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Release" (
    "id" TEXT NOT NULL,
    "roundId" TEXT NOT NULL,
    "memberId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "proofId" TEXT NOT NULL,
    "referenceSetId" TEXT,
    "engine" INTEGER NOT NULL,
    "snapshot" TEXT NOT NULL,
    "releasedById" TEXT,
    "releasedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Release_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Job" (
    "id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "payload" TEXT NOT NULL DEFAULT '{}',
    "createdAt" TIMESTAMP(3) NOT NULL,
    "dueAt" TIMESTAMP(3) NOT NULL,
    "leaseUntil" TIMESTAMP(3),
    "attempts" INTEGER NOT NULL DEFAULT 0,
    "doneAt" TIMESTAMP(3),
    "lastError" TEXT,
    "version" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "Job_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "AuditEvent" (
    "id" TEXT NOT NULL,
    "courseId" TEXT,
    "actorId" TEXT,
    "verb" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "details" TEXT NOT NULL DEFAULT '{}',
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "AuditEvent_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "User_emailNorm_key" ON "User"("emailNorm");

-- CreateIndex
CREATE INDEX "Identity_userId_idx" ON "Identity"("userId");

-- CreateIndex
CREATE UNIQUE INDEX "Identity_issuer_subject_key" ON "Identity"("issuer", "subject");

-- CreateIndex
CREATE UNIQUE INDEX "AuthSession_tokenHash_key" ON "AuthSession"("tokenHash");

-- CreateIndex
CREATE INDEX "AuthSession_userId_idx" ON "AuthSession"("userId");

-- CreateIndex
CREATE UNIQUE INDEX "OneTimeLink_tokenHash_key" ON "OneTimeLink"("tokenHash");

-- CreateIndex
CREATE INDEX "OneTimeLink_userId_idx" ON "OneTimeLink"("userId");

-- CreateIndex
CREATE INDEX "OneTimeLink_purpose_idx" ON "OneTimeLink"("purpose");

-- CreateIndex
CREATE INDEX "RateLimit_expire_idx" ON "RateLimit"("expire");

-- CreateIndex
CREATE UNIQUE INDEX "Section_courseId_name_key" ON "Section"("courseId", "name");

-- CreateIndex
CREATE INDEX "Member_userId_idx" ON "Member"("userId");

-- CreateIndex
CREATE INDEX "Member_sectionId_idx" ON "Member"("sectionId");

-- CreateIndex
CREATE UNIQUE INDEX "Member_courseId_userId_key" ON "Member"("courseId", "userId");

-- CreateIndex
CREATE UNIQUE INDEX "JoinLink_tokenHash_key" ON "JoinLink"("tokenHash");

-- CreateIndex
CREATE INDEX "JoinLink_courseId_idx" ON "JoinLink"("courseId");

-- CreateIndex
CREATE INDEX "ExternalRef_localId_idx" ON "ExternalRef"("localId");

-- CreateIndex
CREATE UNIQUE INDEX "ExternalRef_issuer_deployment_kind_externalId_key" ON "ExternalRef"("issuer", "deployment", "kind", "externalId");

-- CreateIndex
CREATE UNIQUE INDEX "Face_assetSha_index_axes_key" ON "Face"("assetSha", "index", "axes");

-- CreateIndex
CREATE UNIQUE INDEX "CourseFace_courseId_faceId_key" ON "CourseFace"("courseId", "faceId");

-- CreateIndex
CREATE INDEX "Pack_faceId_idx" ON "Pack"("faceId");

-- CreateIndex
CREATE INDEX "Exercise_courseId_idx" ON "Exercise"("courseId");

-- CreateIndex
CREATE UNIQUE INDEX "Round_exerciseId_number_key" ON "Round"("exerciseId", "number");

-- CreateIndex
CREATE UNIQUE INDEX "RoundExtension_roundId_memberId_key" ON "RoundExtension"("roundId", "memberId");

-- CreateIndex
CREATE UNIQUE INDEX "RoundChoice_roundId_memberId_key" ON "RoundChoice"("roundId", "memberId");

-- CreateIndex
CREATE INDEX "Specimen_exerciseId_idx" ON "Specimen"("exerciseId");

-- CreateIndex
CREATE INDEX "SpecimenVersion_packSha_idx" ON "SpecimenVersion"("packSha");

-- CreateIndex
CREATE UNIQUE INDEX "SpecimenVersion_specimenId_number_key" ON "SpecimenVersion"("specimenId", "number");

-- CreateIndex
CREATE INDEX "Criterion_exerciseId_idx" ON "Criterion"("exerciseId");

-- CreateIndex
CREATE UNIQUE INDEX "CriterionVersion_criterionId_number_key" ON "CriterionVersion"("criterionId", "number");

-- CreateIndex
CREATE UNIQUE INDEX "Reference_specimenVersionId_authorId_slot_key" ON "Reference"("specimenVersionId", "authorId", "slot");

-- CreateIndex
CREATE UNIQUE INDEX "ReferenceSet_exerciseId_number_key" ON "ReferenceSet"("exerciseId", "number");

-- CreateIndex
CREATE UNIQUE INDEX "ReferenceSetItem_setId_specimenVersionId_authorId_slot_key" ON "ReferenceSetItem"("setId", "specimenVersionId", "authorId", "slot");

-- CreateIndex
CREATE INDEX "Draft_specimenVersionId_idx" ON "Draft"("specimenVersionId");

-- CreateIndex
CREATE UNIQUE INDEX "Draft_memberId_specimenVersionId_purpose_key" ON "Draft"("memberId", "specimenVersionId", "purpose");

-- CreateIndex
CREATE UNIQUE INDEX "DraftChange_draftId_clientId_seq_key" ON "DraftChange"("draftId", "clientId", "seq");

-- CreateIndex
CREATE UNIQUE INDEX "DraftChange_draftId_baseVersion_key" ON "DraftChange"("draftId", "baseVersion");

-- CreateIndex
CREATE UNIQUE INDEX "Proof_roundId_memberId_number_key" ON "Proof"("roundId", "memberId", "number");

-- CreateIndex
CREATE UNIQUE INDEX "Proof_memberId_requestKey_key" ON "Proof"("memberId", "requestKey");

-- CreateIndex
CREATE INDEX "ProofItem_specimenVersionId_idx" ON "ProofItem"("specimenVersionId");

-- CreateIndex
CREATE UNIQUE INDEX "ProofItem_proofId_specimenVersionId_key" ON "ProofItem"("proofId", "specimenVersionId");

-- CreateIndex
CREATE UNIQUE INDEX "Measurement_proofItemId_engine_key" ON "Measurement"("proofItemId", "engine");

-- CreateIndex
CREATE INDEX "Comparison_referenceSetId_idx" ON "Comparison"("referenceSetId");

-- CreateIndex
CREATE UNIQUE INDEX "Comparison_proofItemId_referenceSetId_engine_key" ON "Comparison"("proofItemId", "referenceSetId", "engine");

-- CreateIndex
CREATE UNIQUE INDEX "Summary_roundId_kind_key" ON "Summary"("roundId", "kind");

-- CreateIndex
CREATE UNIQUE INDEX "MarkTask_alias_key" ON "MarkTask"("alias");

-- CreateIndex
CREATE INDEX "MarkTask_markerId_idx" ON "MarkTask"("markerId");

-- CreateIndex
CREATE UNIQUE INDEX "MarkTask_proofId_slot_key" ON "MarkTask"("proofId", "slot");

-- CreateIndex
CREATE UNIQUE INDEX "Mark_taskId_criterionVersionId_key" ON "Mark"("taskId", "criterionVersionId");

-- CreateIndex
CREATE INDEX "MarkEvent_markId_idx" ON "MarkEvent"("markId");

-- CreateIndex
CREATE INDEX "Note_taskId_idx" ON "Note"("taskId");

-- CreateIndex
CREATE UNIQUE INDEX "Note_proofItemId_requestKey_key" ON "Note"("proofItemId", "requestKey");

-- CreateIndex
CREATE UNIQUE INDEX "NoteEntry_noteId_seq_key" ON "NoteEntry"("noteId", "seq");

-- CreateIndex
CREATE INDEX "StockNote_courseId_idx" ON "StockNote"("courseId");

-- CreateIndex
CREATE INDEX "Release_memberId_idx" ON "Release"("memberId");

-- CreateIndex
CREATE UNIQUE INDEX "Release_roundId_memberId_number_key" ON "Release"("roundId", "memberId", "number");

-- CreateIndex
CREATE INDEX "Job_doneAt_dueAt_idx" ON "Job"("doneAt", "dueAt");

-- CreateIndex
CREATE UNIQUE INDEX "Job_kind_key_key" ON "Job"("kind", "key");

-- CreateIndex
CREATE INDEX "AuditEvent_courseId_at_idx" ON "AuditEvent"("courseId", "at");

-- AddForeignKey
ALTER TABLE "Identity" ADD CONSTRAINT "Identity_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "AuthSession" ADD CONSTRAINT "AuthSession_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OneTimeLink" ADD CONSTRAINT "OneTimeLink_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OneTimeLink" ADD CONSTRAINT "OneTimeLink_createdById_fkey" FOREIGN KEY ("createdById") REFERENCES "User"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Section" ADD CONSTRAINT "Section_courseId_fkey" FOREIGN KEY ("courseId") REFERENCES "Course"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Member" ADD CONSTRAINT "Member_courseId_fkey" FOREIGN KEY ("courseId") REFERENCES "Course"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Member" ADD CONSTRAINT "Member_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Member" ADD CONSTRAINT "Member_sectionId_fkey" FOREIGN KEY ("sectionId") REFERENCES "Section"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "JoinLink" ADD CONSTRAINT "JoinLink_courseId_fkey" FOREIGN KEY ("courseId") REFERENCES "Course"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "JoinLink" ADD CONSTRAINT "JoinLink_sectionId_fkey" FOREIGN KEY ("sectionId") REFERENCES "Section"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "JoinLink" ADD CONSTRAINT "JoinLink_createdById_fkey" FOREIGN KEY ("createdById") REFERENCES "User"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Face" ADD CONSTRAINT "Face_assetSha_fkey" FOREIGN KEY ("assetSha") REFERENCES "Asset"("sha256") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CourseFace" ADD CONSTRAINT "CourseFace_courseId_fkey" FOREIGN KEY ("courseId") REFERENCES "Course"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CourseFace" ADD CONSTRAINT "CourseFace_faceId_fkey" FOREIGN KEY ("faceId") REFERENCES "Face"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CourseFace" ADD CONSTRAINT "CourseFace_addedById_fkey" FOREIGN KEY ("addedById") REFERENCES "User"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Pack" ADD CONSTRAINT "Pack_faceId_fkey" FOREIGN KEY ("faceId") REFERENCES "Face"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Pack" ADD CONSTRAINT "Pack_assetSha_fkey" FOREIGN KEY ("assetSha") REFERENCES "Asset"("sha256") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Exercise" ADD CONSTRAINT "Exercise_courseId_fkey" FOREIGN KEY ("courseId") REFERENCES "Course"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Round" ADD CONSTRAINT "Round_exerciseId_fkey" FOREIGN KEY ("exerciseId") REFERENCES "Exercise"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RoundExtension" ADD CONSTRAINT "RoundExtension_roundId_fkey" FOREIGN KEY ("roundId") REFERENCES "Round"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RoundExtension" ADD CONSTRAINT "RoundExtension_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RoundChoice" ADD CONSTRAINT "RoundChoice_roundId_fkey" FOREIGN KEY ("roundId") REFERENCES "Round"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RoundChoice" ADD CONSTRAINT "RoundChoice_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RoundChoice" ADD CONSTRAINT "RoundChoice_proofId_fkey" FOREIGN KEY ("proofId") REFERENCES "Proof"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RoundChoice" ADD CONSTRAINT "RoundChoice_chosenById_fkey" FOREIGN KEY ("chosenById") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Specimen" ADD CONSTRAINT "Specimen_exerciseId_fkey" FOREIGN KEY ("exerciseId") REFERENCES "Exercise"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SpecimenVersion" ADD CONSTRAINT "SpecimenVersion_specimenId_fkey" FOREIGN KEY ("specimenId") REFERENCES "Specimen"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SpecimenVersion" ADD CONSTRAINT "SpecimenVersion_packSha_fkey" FOREIGN KEY ("packSha") REFERENCES "Pack"("sha256") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SpecimenVersion" ADD CONSTRAINT "SpecimenVersion_previousId_fkey" FOREIGN KEY ("previousId") REFERENCES "SpecimenVersion"("id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "Criterion" ADD CONSTRAINT "Criterion_exerciseId_fkey" FOREIGN KEY ("exerciseId") REFERENCES "Exercise"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CriterionVersion" ADD CONSTRAINT "CriterionVersion_criterionId_fkey" FOREIGN KEY ("criterionId") REFERENCES "Criterion"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Reference" ADD CONSTRAINT "Reference_specimenVersionId_fkey" FOREIGN KEY ("specimenVersionId") REFERENCES "SpecimenVersion"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Reference" ADD CONSTRAINT "Reference_authorId_fkey" FOREIGN KEY ("authorId") REFERENCES "Member"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ReferenceSet" ADD CONSTRAINT "ReferenceSet_exerciseId_fkey" FOREIGN KEY ("exerciseId") REFERENCES "Exercise"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ReferenceSet" ADD CONSTRAINT "ReferenceSet_madeById_fkey" FOREIGN KEY ("madeById") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ReferenceSetItem" ADD CONSTRAINT "ReferenceSetItem_setId_fkey" FOREIGN KEY ("setId") REFERENCES "ReferenceSet"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ReferenceSetItem" ADD CONSTRAINT "ReferenceSetItem_specimenVersionId_fkey" FOREIGN KEY ("specimenVersionId") REFERENCES "SpecimenVersion"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ReferenceSetItem" ADD CONSTRAINT "ReferenceSetItem_authorId_fkey" FOREIGN KEY ("authorId") REFERENCES "Member"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Draft" ADD CONSTRAINT "Draft_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Draft" ADD CONSTRAINT "Draft_specimenVersionId_fkey" FOREIGN KEY ("specimenVersionId") REFERENCES "SpecimenVersion"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DraftChange" ADD CONSTRAINT "DraftChange_draftId_fkey" FOREIGN KEY ("draftId") REFERENCES "Draft"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Proof" ADD CONSTRAINT "Proof_roundId_fkey" FOREIGN KEY ("roundId") REFERENCES "Round"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Proof" ADD CONSTRAINT "Proof_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ProofItem" ADD CONSTRAINT "ProofItem_proofId_fkey" FOREIGN KEY ("proofId") REFERENCES "Proof"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ProofItem" ADD CONSTRAINT "ProofItem_specimenVersionId_fkey" FOREIGN KEY ("specimenVersionId") REFERENCES "SpecimenVersion"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Measurement" ADD CONSTRAINT "Measurement_proofItemId_fkey" FOREIGN KEY ("proofItemId") REFERENCES "ProofItem"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Comparison" ADD CONSTRAINT "Comparison_proofItemId_fkey" FOREIGN KEY ("proofItemId") REFERENCES "ProofItem"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Comparison" ADD CONSTRAINT "Comparison_referenceSetId_fkey" FOREIGN KEY ("referenceSetId") REFERENCES "ReferenceSet"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Summary" ADD CONSTRAINT "Summary_roundId_fkey" FOREIGN KEY ("roundId") REFERENCES "Round"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MarkTask" ADD CONSTRAINT "MarkTask_proofId_fkey" FOREIGN KEY ("proofId") REFERENCES "Proof"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MarkTask" ADD CONSTRAINT "MarkTask_markerId_fkey" FOREIGN KEY ("markerId") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Mark" ADD CONSTRAINT "Mark_taskId_fkey" FOREIGN KEY ("taskId") REFERENCES "MarkTask"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Mark" ADD CONSTRAINT "Mark_criterionVersionId_fkey" FOREIGN KEY ("criterionVersionId") REFERENCES "CriterionVersion"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MarkEvent" ADD CONSTRAINT "MarkEvent_markId_fkey" FOREIGN KEY ("markId") REFERENCES "Mark"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MarkEvent" ADD CONSTRAINT "MarkEvent_whoId_fkey" FOREIGN KEY ("whoId") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Note" ADD CONSTRAINT "Note_proofItemId_fkey" FOREIGN KEY ("proofItemId") REFERENCES "ProofItem"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Note" ADD CONSTRAINT "Note_taskId_fkey" FOREIGN KEY ("taskId") REFERENCES "MarkTask"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Note" ADD CONSTRAINT "Note_authorId_fkey" FOREIGN KEY ("authorId") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "NoteEntry" ADD CONSTRAINT "NoteEntry_noteId_fkey" FOREIGN KEY ("noteId") REFERENCES "Note"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "NoteEntry" ADD CONSTRAINT "NoteEntry_authorId_fkey" FOREIGN KEY ("authorId") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockNote" ADD CONSTRAINT "StockNote_courseId_fkey" FOREIGN KEY ("courseId") REFERENCES "Course"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockNote" ADD CONSTRAINT "StockNote_authorId_fkey" FOREIGN KEY ("authorId") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Release" ADD CONSTRAINT "Release_roundId_fkey" FOREIGN KEY ("roundId") REFERENCES "Round"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Release" ADD CONSTRAINT "Release_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Release" ADD CONSTRAINT "Release_proofId_fkey" FOREIGN KEY ("proofId") REFERENCES "Proof"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Release" ADD CONSTRAINT "Release_referenceSetId_fkey" FOREIGN KEY ("referenceSetId") REFERENCES "ReferenceSet"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Release" ADD CONSTRAINT "Release_releasedById_fkey" FOREIGN KEY ("releasedById") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "AuditEvent" ADD CONSTRAINT "AuditEvent_courseId_fkey" FOREIGN KEY ("courseId") REFERENCES "Course"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "AuditEvent" ADD CONSTRAINT "AuditEvent_actorId_fkey" FOREIGN KEY ("actorId") REFERENCES "User"("id") ON DELETE SET NULL ON UPDATE CASCADE;

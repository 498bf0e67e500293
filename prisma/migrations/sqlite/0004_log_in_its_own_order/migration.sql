-- DropIndex
DROP INDEX "AuditEvent_courseId_at_idx";

-- CreateIndex
CREATE INDEX "AuditEvent_courseId_at_id_idx" ON "AuditEvent"("courseId", "at", "id");

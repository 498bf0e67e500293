-- A trial is called a trial: earlier versions stored the purpose of such a draft as 'practice'.
UPDATE "Draft" SET "purpose" = 'trial' WHERE "purpose" = 'practice';

-- The log names the act as the pages do.
UPDATE "AuditEvent" SET "verb" = 'retention ended' WHERE "verb" = 'keeping ended';

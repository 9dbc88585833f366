-- AlterTable
ALTER TABLE "SkillSummary" ADD COLUMN     "printBefore" TEXT,
ADD COLUMN     "stateBefore" JSONB;

-- CreateTable
CREATE TABLE "ReadinessModel" (
    "programId" UUID NOT NULL,
    "version" TEXT NOT NULL,
    "filterVersion" TEXT NOT NULL,
    "parameters" JSONB NOT NULL,
    "held" BOOLEAN NOT NULL,
    "series" INTEGER NOT NULL,
    "coupons" INTEGER NOT NULL,
    "inUse" TEXT NOT NULL,
    "lossBefore" DOUBLE PRECISION NOT NULL,
    "lossAfter" DOUBLE PRECISION NOT NULL,
    "standings" INTEGER NOT NULL,
    "moved" INTEGER NOT NULL,
    "proposedAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "adoptedAt" TIMESTAMPTZ(3),
    "adoptedById" UUID,

    CONSTRAINT "ReadinessModel_pkey" PRIMARY KEY ("programId","version")
);

-- CreateIndex
CREATE INDEX "ReadinessModel_programId_adoptedAt_idx" ON "ReadinessModel"("programId", "adoptedAt");

-- AddForeignKey
ALTER TABLE "ReadinessModel" ADD CONSTRAINT "ReadinessModel_programId_fkey" FOREIGN KEY ("programId") REFERENCES "Program"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ReadinessModel" ADD CONSTRAINT "ReadinessModel_programId_adoptedById_fkey" FOREIGN KEY ("programId", "adoptedById") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- A proposal stays as it was proposed: only its adoption changes.
CREATE TRIGGER "only_added" BEFORE UPDATE OF "programId", "version", "filterVersion", "parameters", "held", "series", "coupons", "inUse", "lossBefore", "lossAfter", "standings", "moved", "proposedAt" OR DELETE
  ON "ReadinessModel" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();

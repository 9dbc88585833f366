-- CreateEnum
CREATE TYPE "ClassNoteKind" AS ENUM ('demo', 'message');

-- AlterTable
ALTER TABLE "Coupon" ADD COLUMN     "secondWaitingSince" TIMESTAMPTZ(3);

-- AlterTable
ALTER TABLE "ExerciseVersion" ADD COLUMN     "completePenetration" BOOLEAN,
ADD COLUMN     "stiffenerToWeb" BOOLEAN,
ADD COLUMN     "transverseToTension" BOOLEAN;

-- AlterTable
ALTER TABLE "Person" ADD COLUMN     "pinHash" TEXT;

-- AlterTable
ALTER TABLE "Program" ADD COLUMN     "secondReadShare" DOUBLE PRECISION NOT NULL DEFAULT 0.1;

-- AlterTable
ALTER TABLE "SignInSession" ADD COLUMN     "tabletId" UUID;

-- AlterTable
ALTER TABLE "TestAttempt" ADD COLUMN     "plateIdentity" TEXT,
ADD COLUMN     "wireIdentity" TEXT;

-- CreateTable
CREATE TABLE "ClassNote" (
    "programId" UUID NOT NULL,
    "id" UUID NOT NULL,
    "classId" UUID NOT NULL,
    "authorId" UUID NOT NULL,
    "kind" "ClassNoteKind" NOT NULL,
    "onDate" DATE NOT NULL,
    "exerciseId" UUID,
    "body" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "withdrawnAt" TIMESTAMPTZ(3),

    CONSTRAINT "ClassNote_pkey" PRIMARY KEY ("programId","id")
);

-- CreateTable
CREATE TABLE "CommentSnippet" (
    "programId" UUID NOT NULL,
    "id" UUID NOT NULL,
    "personId" UUID NOT NULL,
    "body" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "CommentSnippet_pkey" PRIMARY KEY ("programId","id")
);

-- CreateTable
CREATE TABLE "CriteriaDraft" (
    "programId" UUID NOT NULL,
    "id" UUID NOT NULL,
    "criteriaId" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "document" JSONB NOT NULL,
    "updatedById" UUID NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "CriteriaDraft_pkey" PRIMARY KEY ("programId","id")
);

-- CreateTable
CREATE TABLE "GaugeStudy" (
    "programId" UUID NOT NULL,
    "id" UUID NOT NULL,
    "classId" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "rounds" INTEGER NOT NULL,
    "openedById" UUID NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "closedAt" TIMESTAMPTZ(3),

    CONSTRAINT "GaugeStudy_pkey" PRIMARY KEY ("programId","id")
);

-- CreateTable
CREATE TABLE "GaugeStudyCoupon" (
    "programId" UUID NOT NULL,
    "studyId" UUID NOT NULL,
    "couponId" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,

    CONSTRAINT "GaugeStudyCoupon_pkey" PRIMARY KEY ("programId","studyId","couponId")
);

-- CreateTable
CREATE TABLE "StudyReading" (
    "programId" UUID NOT NULL,
    "studyId" UUID NOT NULL,
    "couponId" UUID NOT NULL,
    "readerId" UUID NOT NULL,
    "round" INTEGER NOT NULL,
    "widthMm" DOUBLE PRECISION NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "StudyReading_pkey" PRIMARY KEY ("programId","studyId","couponId","readerId","round")
);

-- CreateTable
CREATE TABLE "LookRequest" (
    "programId" UUID NOT NULL,
    "id" UUID NOT NULL,
    "classId" UUID NOT NULL,
    "studentId" UUID NOT NULL,
    "exerciseId" UUID,
    "booth" INTEGER,
    "note" TEXT,
    "askedAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "answeredAt" TIMESTAMPTZ(3),
    "answeredById" UUID,

    CONSTRAINT "LookRequest_pkey" PRIMARY KEY ("programId","id")
);

-- CreateTable
CREATE TABLE "PhotoMeasurement" (
    "programId" UUID NOT NULL,
    "photoId" UUID NOT NULL,
    "personId" UUID NOT NULL,
    "document" JSONB NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "PhotoMeasurement_pkey" PRIMARY KEY ("programId","photoId","personId")
);

-- CreateTable
CREATE TABLE "SharedTablet" (
    "programId" UUID NOT NULL,
    "id" UUID NOT NULL,
    "classId" UUID NOT NULL,
    "openedById" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "secretHash" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expiresAt" TIMESTAMPTZ(3) NOT NULL,
    "closedAt" TIMESTAMPTZ(3),

    CONSTRAINT "SharedTablet_pkey" PRIMARY KEY ("programId","id")
);

-- CreateTable
CREATE TABLE "StaffNote" (
    "programId" UUID NOT NULL,
    "id" UUID NOT NULL,
    "studentId" UUID NOT NULL,
    "authorId" UUID NOT NULL,
    "body" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "withdrawnAt" TIMESTAMPTZ(3),

    CONSTRAINT "StaffNote_pkey" PRIMARY KEY ("programId","id")
);

-- CreateTable
CREATE TABLE "VerdictOverride" (
    "programId" UUID NOT NULL,
    "inspectionId" UUID NOT NULL,
    "verdict" "Verdict" NOT NULL,
    "reason" TEXT NOT NULL,
    "byId" UUID NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "VerdictOverride_pkey" PRIMARY KEY ("programId","inspectionId")
);

-- CreateIndex
CREATE INDEX "ClassNote_programId_classId_onDate_idx" ON "ClassNote"("programId", "classId", "onDate");

-- CreateIndex
CREATE UNIQUE INDEX "CommentSnippet_programId_personId_body_key" ON "CommentSnippet"("programId", "personId", "body");

-- CreateIndex
CREATE UNIQUE INDEX "CriteriaDraft_programId_criteriaId_key" ON "CriteriaDraft"("programId", "criteriaId");

-- CreateIndex
CREATE INDEX "GaugeStudy_programId_classId_createdAt_idx" ON "GaugeStudy"("programId", "classId", "createdAt");

-- CreateIndex
CREATE UNIQUE INDEX "GaugeStudyCoupon_programId_studyId_sequence_key" ON "GaugeStudyCoupon"("programId", "studyId", "sequence");

-- CreateIndex
CREATE INDEX "LookRequest_programId_classId_answeredAt_askedAt_idx" ON "LookRequest"("programId", "classId", "answeredAt", "askedAt");

-- CreateIndex
CREATE INDEX "LookRequest_programId_studentId_askedAt_idx" ON "LookRequest"("programId", "studentId", "askedAt");

-- CreateIndex
CREATE INDEX "SharedTablet_programId_classId_createdAt_idx" ON "SharedTablet"("programId", "classId", "createdAt");

-- CreateIndex
CREATE INDEX "StaffNote_programId_studentId_createdAt_idx" ON "StaffNote"("programId", "studentId", "createdAt");

-- CreateIndex
CREATE INDEX "Coupon_programId_classId_secondWaitingSince_idx" ON "Coupon"("programId", "classId", "secondWaitingSince");

-- AddForeignKey
ALTER TABLE "ClassNote" ADD CONSTRAINT "ClassNote_programId_classId_fkey" FOREIGN KEY ("programId", "classId") REFERENCES "Class"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ClassNote" ADD CONSTRAINT "ClassNote_programId_authorId_fkey" FOREIGN KEY ("programId", "authorId") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ClassNote" ADD CONSTRAINT "ClassNote_programId_exerciseId_fkey" FOREIGN KEY ("programId", "exerciseId") REFERENCES "Exercise"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CommentSnippet" ADD CONSTRAINT "CommentSnippet_programId_personId_fkey" FOREIGN KEY ("programId", "personId") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CriteriaDraft" ADD CONSTRAINT "CriteriaDraft_programId_fkey" FOREIGN KEY ("programId") REFERENCES "Program"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CriteriaDraft" ADD CONSTRAINT "CriteriaDraft_programId_updatedById_fkey" FOREIGN KEY ("programId", "updatedById") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "GaugeStudy" ADD CONSTRAINT "GaugeStudy_programId_classId_fkey" FOREIGN KEY ("programId", "classId") REFERENCES "Class"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "GaugeStudy" ADD CONSTRAINT "GaugeStudy_programId_openedById_fkey" FOREIGN KEY ("programId", "openedById") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "GaugeStudyCoupon" ADD CONSTRAINT "GaugeStudyCoupon_programId_studyId_fkey" FOREIGN KEY ("programId", "studyId") REFERENCES "GaugeStudy"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "GaugeStudyCoupon" ADD CONSTRAINT "GaugeStudyCoupon_programId_couponId_fkey" FOREIGN KEY ("programId", "couponId") REFERENCES "Coupon"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StudyReading" ADD CONSTRAINT "StudyReading_programId_studyId_couponId_fkey" FOREIGN KEY ("programId", "studyId", "couponId") REFERENCES "GaugeStudyCoupon"("programId", "studyId", "couponId") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StudyReading" ADD CONSTRAINT "StudyReading_programId_readerId_fkey" FOREIGN KEY ("programId", "readerId") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "LookRequest" ADD CONSTRAINT "LookRequest_programId_classId_fkey" FOREIGN KEY ("programId", "classId") REFERENCES "Class"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "LookRequest" ADD CONSTRAINT "LookRequest_programId_studentId_fkey" FOREIGN KEY ("programId", "studentId") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "LookRequest" ADD CONSTRAINT "LookRequest_programId_exerciseId_fkey" FOREIGN KEY ("programId", "exerciseId") REFERENCES "Exercise"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "LookRequest" ADD CONSTRAINT "LookRequest_programId_answeredById_fkey" FOREIGN KEY ("programId", "answeredById") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PhotoMeasurement" ADD CONSTRAINT "PhotoMeasurement_programId_photoId_fkey" FOREIGN KEY ("programId", "photoId") REFERENCES "Photo"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PhotoMeasurement" ADD CONSTRAINT "PhotoMeasurement_programId_personId_fkey" FOREIGN KEY ("programId", "personId") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SharedTablet" ADD CONSTRAINT "SharedTablet_programId_classId_fkey" FOREIGN KEY ("programId", "classId") REFERENCES "Class"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SharedTablet" ADD CONSTRAINT "SharedTablet_programId_openedById_fkey" FOREIGN KEY ("programId", "openedById") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SignInSession" ADD CONSTRAINT "SignInSession_programId_tabletId_fkey" FOREIGN KEY ("programId", "tabletId") REFERENCES "SharedTablet"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StaffNote" ADD CONSTRAINT "StaffNote_programId_studentId_fkey" FOREIGN KEY ("programId", "studentId") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StaffNote" ADD CONSTRAINT "StaffNote_programId_authorId_fkey" FOREIGN KEY ("programId", "authorId") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "VerdictOverride" ADD CONSTRAINT "VerdictOverride_programId_inspectionId_fkey" FOREIGN KEY ("programId", "inspectionId") REFERENCES "Scorecard"("programId", "inspectionId") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "VerdictOverride" ADD CONSTRAINT "VerdictOverride_programId_byId_fkey" FOREIGN KEY ("programId", "byId") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- A student waits for at most one look in a class.
CREATE UNIQUE INDEX "LookRequest_one_waiting" ON "LookRequest"("programId", "classId", "studentId") WHERE "answeredAt" IS NULL;

-- What was said over a scorecard, or read in a study, is only ever added to.
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "VerdictOverride" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "StudyReading" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();

-- Tells listeners on channel toeline_class that what waits in a class has changed: the payload is "<program id> <class id>".
CREATE FUNCTION "tell_class"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM pg_notify('toeline_class', NEW."programId"::text || ' ' || NEW."classId"::text);
  RETURN NULL;
END
$$;
CREATE TRIGGER "tell_class" AFTER INSERT OR UPDATE OF "waitingSince", "takenById", "secondWaitingSince" ON "Coupon" FOR EACH ROW EXECUTE FUNCTION "tell_class"();
CREATE TRIGGER "tell_class" AFTER INSERT OR UPDATE ON "LookRequest" FOR EACH ROW EXECUTE FUNCTION "tell_class"();
CREATE TRIGGER "tell_class" AFTER INSERT OR UPDATE ON "ClassNote" FOR EACH ROW EXECUTE FUNCTION "tell_class"();

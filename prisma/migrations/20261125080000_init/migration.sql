-- CreateEnum
CREATE TYPE "Verdict" AS ENUM ('accept', 'reject', 'incomplete');

-- CreateEnum
CREATE TYPE "InspectionKind" AS ENUM ('self', 'instructor', 'second');

-- CreateEnum
CREATE TYPE "Role" AS ENUM ('student', 'instructor', 'coordinator');

-- CreateEnum
CREATE TYPE "UnitSystem" AS ENUM ('us', 'si');

-- CreateEnum
CREATE TYPE "FindingVerdict" AS ENUM ('accept', 'reject', 'notMeasured', 'notApplicable');

-- CreateTable
CREATE TABLE "AuditEvent" (
    "programId" UUID NOT NULL,
    "id" UUID NOT NULL,
    "actorId" UUID,
    "action" TEXT NOT NULL,
    "subjectType" TEXT NOT NULL,
    "subjectId" TEXT NOT NULL,
    "before" JSONB,
    "after" JSONB,
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "AuditEvent_pkey" PRIMARY KEY ("programId","id")
);

-- CreateTable
CREATE TABLE "ClassCode" (
    "programId" UUID NOT NULL,
    "id" UUID NOT NULL,
    "classId" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "madeById" UUID NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expiresAt" TIMESTAMPTZ(3) NOT NULL,
    "revokedAt" TIMESTAMPTZ(3),

    CONSTRAINT "ClassCode_pkey" PRIMARY KEY ("programId","id")
);

-- CreateTable
CREATE TABLE "Class" (
    "programId" UUID NOT NULL,
    "id" UUID NOT NULL,
    "termId" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "room" TEXT,
    "meets" TEXT,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "archivedAt" TIMESTAMPTZ(3),

    CONSTRAINT "Class_pkey" PRIMARY KEY ("programId","id")
);

-- CreateTable
CREATE TABLE "ClassInstructor" (
    "programId" UUID NOT NULL,
    "classId" UUID NOT NULL,
    "personId" UUID NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "ClassInstructor_pkey" PRIMARY KEY ("programId","classId","personId")
);

-- CreateTable
CREATE TABLE "ClassExercise" (
    "programId" UUID NOT NULL,
    "classId" UUID NOT NULL,
    "exerciseId" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "opensAfterId" UUID,

    CONSTRAINT "ClassExercise_pkey" PRIMARY KEY ("programId","classId","exerciseId")
);

-- CreateTable
CREATE TABLE "Comment" (
    "programId" UUID NOT NULL,
    "id" UUID NOT NULL,
    "couponId" UUID NOT NULL,
    "authorId" UUID NOT NULL,
    "body" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Comment_pkey" PRIMARY KEY ("programId","id")
);

-- CreateTable
CREATE TABLE "Coupon" (
    "programId" UUID NOT NULL,
    "id" UUID NOT NULL,
    "classId" UUID NOT NULL,
    "studentId" UUID NOT NULL,
    "exerciseId" UUID NOT NULL,
    "exerciseVersion" INTEGER NOT NULL,
    "number" INTEGER NOT NULL,
    "booth" INTEGER,
    "weldedAt" TIMESTAMPTZ(3) NOT NULL,
    "receivedAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "note" TEXT,
    "waitingSince" TIMESTAMPTZ(3),
    "takenById" UUID,
    "takenAt" TIMESTAMPTZ(3),
    "verdict" "Verdict",
    "mark" INTEGER,
    "selfVerdict" "Verdict",
    "selfMark" INTEGER,

    CONSTRAINT "Coupon_pkey" PRIMARY KEY ("programId","id")
);

-- CreateTable
CREATE TABLE "CriteriaSet" (
    "programId" UUID NOT NULL,
    "id" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "document" JSONB NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "CriteriaSet_pkey" PRIMARY KEY ("programId","id","version")
);

-- CreateTable
CREATE TABLE "Enrolment" (
    "programId" UUID NOT NULL,
    "classId" UUID NOT NULL,
    "personId" UUID NOT NULL,
    "booth" INTEGER,
    "joinedAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "withdrawnAt" TIMESTAMPTZ(3),

    CONSTRAINT "Enrolment_pkey" PRIMARY KEY ("programId","classId","personId")
);

-- CreateTable
CREATE TABLE "Exercise" (
    "programId" UUID NOT NULL,
    "id" UUID NOT NULL,
    "currentVersion" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "archivedAt" TIMESTAMPTZ(3),

    CONSTRAINT "Exercise_pkey" PRIMARY KEY ("programId","id")
);

-- CreateTable
CREATE TABLE "ExerciseVersion" (
    "programId" UUID NOT NULL,
    "exerciseId" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "process" TEXT NOT NULL,
    "joint" TEXT NOT NULL,
    "weldType" TEXT NOT NULL,
    "position" TEXT NOT NULL,
    "progression" TEXT,
    "plateThicknessMm" DOUBLE PRECISION NOT NULL,
    "material" TEXT NOT NULL,
    "electrodeClass" TEXT NOT NULL,
    "electrodeDiameterMm" DOUBLE PRECISION,
    "nominalLegMm" DOUBLE PRECISION,
    "lengthMm" DOUBLE PRECISION NOT NULL,
    "passCount" INTEGER NOT NULL,
    "stationCount" INTEGER NOT NULL,
    "gauge" TEXT NOT NULL,
    "boothCard" JSONB NOT NULL,
    "criteriaId" TEXT NOT NULL,
    "criteriaVersion" INTEGER NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "ExerciseVersion_pkey" PRIMARY KEY ("programId","exerciseId","version")
);

-- CreateTable
CREATE TABLE "Inspection" (
    "programId" UUID NOT NULL,
    "id" UUID NOT NULL,
    "couponId" UUID NOT NULL,
    "inspectorId" UUID NOT NULL,
    "kind" "InspectionKind" NOT NULL,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "readings" JSONB NOT NULL,
    "submittedAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "supersededAt" TIMESTAMPTZ(3),

    CONSTRAINT "Inspection_pkey" PRIMARY KEY ("programId","id")
);

-- CreateTable
CREATE TABLE "Membership" (
    "programId" UUID NOT NULL,
    "personId" UUID NOT NULL,
    "role" "Role" NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Membership_pkey" PRIMARY KEY ("programId","personId","role")
);

-- CreateTable
CREATE TABLE "Pass" (
    "programId" UUID NOT NULL,
    "couponId" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "amps" DOUBLE PRECISION,
    "volts" DOUBLE PRECISION,
    "wireFeedMmPerS" DOUBLE PRECISION,
    "contactTipToWorkMm" DOUBLE PRECISION,
    "polarity" TEXT,
    "gas" TEXT,
    "arcSeconds" DOUBLE PRECISION,
    "lengthMm" DOUBLE PRECISION,

    CONSTRAINT "Pass_pkey" PRIMARY KEY ("programId","couponId","sequence")
);

-- CreateTable
CREATE TABLE "Person" (
    "programId" UUID NOT NULL,
    "id" UUID NOT NULL,
    "signInName" TEXT NOT NULL,
    "givenName" TEXT NOT NULL,
    "familyName" TEXT NOT NULL,
    "email" TEXT,
    "passwordHash" TEXT,
    "mustChangePassword" BOOLEAN NOT NULL DEFAULT false,
    "oidcIssuer" TEXT,
    "oidcSubject" TEXT,
    "locale" TEXT NOT NULL DEFAULT 'en',
    "units" "UnitSystem" NOT NULL DEFAULT 'us',
    "disabledAt" TIMESTAMPTZ(3),
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Person_pkey" PRIMARY KEY ("programId","id")
);

-- CreateTable
CREATE TABLE "Photo" (
    "programId" UUID NOT NULL,
    "id" UUID NOT NULL,
    "couponId" UUID NOT NULL,
    "uploaderId" UUID NOT NULL,
    "sha256" TEXT NOT NULL,
    "widthPx" INTEGER NOT NULL,
    "heightPx" INTEGER NOT NULL,
    "byteSize" INTEGER NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Photo_pkey" PRIMARY KEY ("programId","id")
);

-- CreateTable
CREATE TABLE "Program" (
    "id" UUID NOT NULL,
    "slug" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "timeZone" TEXT NOT NULL,
    "units" "UnitSystem" NOT NULL DEFAULT 'us',
    "readinessThreshold" DOUBLE PRECISION NOT NULL DEFAULT 0.65,
    "minimumCoupons" INTEGER NOT NULL DEFAULT 5,
    "staleAfterDays" INTEGER NOT NULL DEFAULT 45,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Program_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "RateLimit" (
    "key" TEXT NOT NULL,
    "points" INTEGER NOT NULL,
    "expire" TIMESTAMPTZ(3),

    CONSTRAINT "RateLimit_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "SafetyAcknowledgement" (
    "programId" UUID NOT NULL,
    "studentId" UUID NOT NULL,
    "exerciseId" UUID NOT NULL,
    "termId" UUID NOT NULL,
    "cautionsVersion" TEXT NOT NULL,
    "acknowledgedAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "SafetyAcknowledgement_pkey" PRIMARY KEY ("programId","studentId","exerciseId","termId")
);

-- CreateTable
CREATE TABLE "Scorecard" (
    "programId" UUID NOT NULL,
    "inspectionId" UUID NOT NULL,
    "criteriaId" TEXT NOT NULL,
    "criteriaVersion" INTEGER NOT NULL,
    "scoringVersion" TEXT NOT NULL,
    "verdict" "Verdict" NOT NULL,
    "mark" INTEGER,
    "worstMargin" DOUBLE PRECISION,
    "attributesGood" BOOLEAN,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Scorecard_pkey" PRIMARY KEY ("programId","inspectionId")
);

-- CreateTable
CREATE TABLE "Finding" (
    "programId" UUID NOT NULL,
    "inspectionId" UUID NOT NULL,
    "rule" TEXT NOT NULL,
    "verdict" "FindingVerdict" NOT NULL,
    "measured" DOUBLE PRECISION,
    "limitMin" DOUBLE PRECISION,
    "limitMax" DOUBLE PRECISION,
    "unit" TEXT NOT NULL,
    "margin" DOUBLE PRECISION,
    "closeCall" BOOLEAN NOT NULL,
    "fromMm" DOUBLE PRECISION,
    "toMm" DOUBLE PRECISION,
    "detail" JSONB NOT NULL,

    CONSTRAINT "Finding_pkey" PRIMARY KEY ("programId","inspectionId","rule")
);

-- CreateTable
CREATE TABLE "SignInSession" (
    "programId" UUID NOT NULL,
    "id" UUID NOT NULL,
    "personId" UUID NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "lastSeenAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expiresAt" TIMESTAMPTZ(3) NOT NULL,
    "endedAt" TIMESTAMPTZ(3),
    "device" TEXT,

    CONSTRAINT "SignInSession_pkey" PRIMARY KEY ("programId","id")
);

-- CreateTable
CREATE TABLE "SkillSummary" (
    "programId" UUID NOT NULL,
    "studentId" UUID NOT NULL,
    "exerciseId" UUID NOT NULL,
    "couponCount" INTEGER NOT NULL DEFAULT 0,
    "inspectedCount" INTEGER NOT NULL DEFAULT 0,
    "acceptedCount" INTEGER NOT NULL DEFAULT 0,
    "waitingCount" INTEGER NOT NULL DEFAULT 0,
    "arcSeconds" DOUBLE PRECISION NOT NULL DEFAULT 0,
    "lastCouponAt" TIMESTAMPTZ(3),
    "lastMark" INTEGER,
    "lastVerdict" "Verdict",
    "probability" DOUBLE PRECISION,
    "low" DOUBLE PRECISION,
    "high" DOUBLE PRECISION,
    "level" DOUBLE PRECISION,
    "advice" TEXT,
    "couponsUsed" INTEGER NOT NULL DEFAULT 0,
    "filterState" JSONB,
    "modelVersion" TEXT,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "SkillSummary_pkey" PRIMARY KEY ("programId","studentId","exerciseId")
);

-- CreateTable
CREATE TABLE "Term" (
    "programId" UUID NOT NULL,
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "startsOn" DATE NOT NULL,
    "endsOn" DATE NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Term_pkey" PRIMARY KEY ("programId","id")
);

-- CreateTable
CREATE TABLE "TestAttempt" (
    "programId" UUID NOT NULL,
    "id" UUID NOT NULL,
    "classId" UUID NOT NULL,
    "studentId" UUID NOT NULL,
    "exerciseId" UUID NOT NULL,
    "exerciseVersion" INTEGER NOT NULL,
    "witnessId" UUID NOT NULL,
    "testedOn" DATE NOT NULL,
    "passed" BOOLEAN NOT NULL,
    "parts" JSONB NOT NULL,
    "forecast" DOUBLE PRECISION,
    "modelVersion" TEXT,
    "note" TEXT,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "TestAttempt_pkey" PRIMARY KEY ("programId","id")
);

-- CreateIndex
CREATE INDEX "AuditEvent_programId_subjectType_subjectId_at_idx" ON "AuditEvent"("programId", "subjectType", "subjectId", "at");

-- CreateIndex
CREATE INDEX "AuditEvent_programId_at_id_idx" ON "AuditEvent"("programId", "at", "id");

-- CreateIndex
CREATE INDEX "ClassCode_programId_classId_idx" ON "ClassCode"("programId", "classId");

-- CreateIndex
CREATE UNIQUE INDEX "ClassCode_programId_code_key" ON "ClassCode"("programId", "code");

-- CreateIndex
CREATE UNIQUE INDEX "Class_programId_termId_name_key" ON "Class"("programId", "termId", "name");

-- CreateIndex
CREATE INDEX "ClassInstructor_programId_personId_classId_idx" ON "ClassInstructor"("programId", "personId", "classId");

-- CreateIndex
CREATE INDEX "ClassExercise_programId_exerciseId_idx" ON "ClassExercise"("programId", "exerciseId");

-- CreateIndex
CREATE UNIQUE INDEX "ClassExercise_programId_classId_sequence_key" ON "ClassExercise"("programId", "classId", "sequence");

-- CreateIndex
CREATE INDEX "Comment_programId_couponId_createdAt_idx" ON "Comment"("programId", "couponId", "createdAt");

-- CreateIndex
CREATE INDEX "Coupon_programId_studentId_receivedAt_id_idx" ON "Coupon"("programId", "studentId", "receivedAt", "id");

-- CreateIndex
CREATE INDEX "Coupon_programId_classId_waitingSince_idx" ON "Coupon"("programId", "classId", "waitingSince");

-- CreateIndex
CREATE INDEX "Coupon_programId_classId_exerciseId_verdict_idx" ON "Coupon"("programId", "classId", "exerciseId", "verdict");

-- CreateIndex
CREATE INDEX "Coupon_programId_receivedAt_id_idx" ON "Coupon"("programId", "receivedAt", "id");

-- CreateIndex
CREATE UNIQUE INDEX "Coupon_programId_studentId_exerciseId_number_key" ON "Coupon"("programId", "studentId", "exerciseId", "number");

-- CreateIndex
CREATE INDEX "Enrolment_programId_personId_classId_idx" ON "Enrolment"("programId", "personId", "classId");

-- CreateIndex
CREATE INDEX "ExerciseVersion_programId_criteriaId_criteriaVersion_idx" ON "ExerciseVersion"("programId", "criteriaId", "criteriaVersion");

-- CreateIndex
CREATE INDEX "Inspection_programId_inspectorId_submittedAt_idx" ON "Inspection"("programId", "inspectorId", "submittedAt");

-- CreateIndex
CREATE UNIQUE INDEX "Inspection_programId_couponId_kind_revision_key" ON "Inspection"("programId", "couponId", "kind", "revision");

-- CreateIndex
CREATE INDEX "Membership_programId_role_personId_idx" ON "Membership"("programId", "role", "personId");

-- CreateIndex
CREATE INDEX "Person_programId_familyName_givenName_id_idx" ON "Person"("programId", "familyName", "givenName", "id");

-- CreateIndex
CREATE UNIQUE INDEX "Person_programId_signInName_key" ON "Person"("programId", "signInName");

-- CreateIndex
CREATE UNIQUE INDEX "Person_programId_oidcIssuer_oidcSubject_key" ON "Person"("programId", "oidcIssuer", "oidcSubject");

-- CreateIndex
CREATE INDEX "Photo_programId_couponId_createdAt_idx" ON "Photo"("programId", "couponId", "createdAt");

-- CreateIndex
CREATE INDEX "Photo_programId_uploaderId_createdAt_idx" ON "Photo"("programId", "uploaderId", "createdAt");

-- CreateIndex
CREATE UNIQUE INDEX "Program_slug_key" ON "Program"("slug");

-- CreateIndex
CREATE INDEX "RateLimit_expire_idx" ON "RateLimit"("expire");

-- CreateIndex
CREATE INDEX "Scorecard_programId_criteriaId_criteriaVersion_idx" ON "Scorecard"("programId", "criteriaId", "criteriaVersion");

-- CreateIndex
CREATE INDEX "Finding_programId_rule_verdict_idx" ON "Finding"("programId", "rule", "verdict");

-- CreateIndex
CREATE INDEX "SignInSession_programId_personId_createdAt_idx" ON "SignInSession"("programId", "personId", "createdAt");

-- CreateIndex
CREATE INDEX "SkillSummary_programId_exerciseId_probability_idx" ON "SkillSummary"("programId", "exerciseId", "probability");

-- CreateIndex
CREATE INDEX "Term_programId_startsOn_idx" ON "Term"("programId", "startsOn");

-- CreateIndex
CREATE UNIQUE INDEX "Term_programId_name_key" ON "Term"("programId", "name");

-- CreateIndex
CREATE INDEX "TestAttempt_programId_studentId_exerciseId_testedOn_idx" ON "TestAttempt"("programId", "studentId", "exerciseId", "testedOn");

-- CreateIndex
CREATE INDEX "TestAttempt_programId_classId_exerciseId_testedOn_idx" ON "TestAttempt"("programId", "classId", "exerciseId", "testedOn");

-- AddForeignKey
ALTER TABLE "AuditEvent" ADD CONSTRAINT "AuditEvent_programId_fkey" FOREIGN KEY ("programId") REFERENCES "Program"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "AuditEvent" ADD CONSTRAINT "AuditEvent_programId_actorId_fkey" FOREIGN KEY ("programId", "actorId") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ClassCode" ADD CONSTRAINT "ClassCode_programId_classId_fkey" FOREIGN KEY ("programId", "classId") REFERENCES "Class"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ClassCode" ADD CONSTRAINT "ClassCode_programId_madeById_fkey" FOREIGN KEY ("programId", "madeById") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Class" ADD CONSTRAINT "Class_programId_termId_fkey" FOREIGN KEY ("programId", "termId") REFERENCES "Term"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ClassInstructor" ADD CONSTRAINT "ClassInstructor_programId_classId_fkey" FOREIGN KEY ("programId", "classId") REFERENCES "Class"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ClassInstructor" ADD CONSTRAINT "ClassInstructor_programId_personId_fkey" FOREIGN KEY ("programId", "personId") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ClassExercise" ADD CONSTRAINT "ClassExercise_programId_classId_fkey" FOREIGN KEY ("programId", "classId") REFERENCES "Class"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ClassExercise" ADD CONSTRAINT "ClassExercise_programId_exerciseId_fkey" FOREIGN KEY ("programId", "exerciseId") REFERENCES "Exercise"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ClassExercise" ADD CONSTRAINT "ClassExercise_programId_opensAfterId_fkey" FOREIGN KEY ("programId", "opensAfterId") REFERENCES "Exercise"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Comment" ADD CONSTRAINT "Comment_programId_couponId_fkey" FOREIGN KEY ("programId", "couponId") REFERENCES "Coupon"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Comment" ADD CONSTRAINT "Comment_programId_authorId_fkey" FOREIGN KEY ("programId", "authorId") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Coupon" ADD CONSTRAINT "Coupon_programId_classId_fkey" FOREIGN KEY ("programId", "classId") REFERENCES "Class"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Coupon" ADD CONSTRAINT "Coupon_programId_studentId_fkey" FOREIGN KEY ("programId", "studentId") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Coupon" ADD CONSTRAINT "Coupon_programId_takenById_fkey" FOREIGN KEY ("programId", "takenById") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Coupon" ADD CONSTRAINT "Coupon_programId_exerciseId_exerciseVersion_fkey" FOREIGN KEY ("programId", "exerciseId", "exerciseVersion") REFERENCES "ExerciseVersion"("programId", "exerciseId", "version") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CriteriaSet" ADD CONSTRAINT "CriteriaSet_programId_fkey" FOREIGN KEY ("programId") REFERENCES "Program"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Enrolment" ADD CONSTRAINT "Enrolment_programId_classId_fkey" FOREIGN KEY ("programId", "classId") REFERENCES "Class"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Enrolment" ADD CONSTRAINT "Enrolment_programId_personId_fkey" FOREIGN KEY ("programId", "personId") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Exercise" ADD CONSTRAINT "Exercise_programId_fkey" FOREIGN KEY ("programId") REFERENCES "Program"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ExerciseVersion" ADD CONSTRAINT "ExerciseVersion_programId_exerciseId_fkey" FOREIGN KEY ("programId", "exerciseId") REFERENCES "Exercise"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ExerciseVersion" ADD CONSTRAINT "ExerciseVersion_programId_criteriaId_criteriaVersion_fkey" FOREIGN KEY ("programId", "criteriaId", "criteriaVersion") REFERENCES "CriteriaSet"("programId", "id", "version") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Inspection" ADD CONSTRAINT "Inspection_programId_couponId_fkey" FOREIGN KEY ("programId", "couponId") REFERENCES "Coupon"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Inspection" ADD CONSTRAINT "Inspection_programId_inspectorId_fkey" FOREIGN KEY ("programId", "inspectorId") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Membership" ADD CONSTRAINT "Membership_programId_personId_fkey" FOREIGN KEY ("programId", "personId") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Pass" ADD CONSTRAINT "Pass_programId_couponId_fkey" FOREIGN KEY ("programId", "couponId") REFERENCES "Coupon"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Person" ADD CONSTRAINT "Person_programId_fkey" FOREIGN KEY ("programId") REFERENCES "Program"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Photo" ADD CONSTRAINT "Photo_programId_couponId_fkey" FOREIGN KEY ("programId", "couponId") REFERENCES "Coupon"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Photo" ADD CONSTRAINT "Photo_programId_uploaderId_fkey" FOREIGN KEY ("programId", "uploaderId") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SafetyAcknowledgement" ADD CONSTRAINT "SafetyAcknowledgement_programId_studentId_fkey" FOREIGN KEY ("programId", "studentId") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SafetyAcknowledgement" ADD CONSTRAINT "SafetyAcknowledgement_programId_exerciseId_fkey" FOREIGN KEY ("programId", "exerciseId") REFERENCES "Exercise"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SafetyAcknowledgement" ADD CONSTRAINT "SafetyAcknowledgement_programId_termId_fkey" FOREIGN KEY ("programId", "termId") REFERENCES "Term"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Scorecard" ADD CONSTRAINT "Scorecard_programId_inspectionId_fkey" FOREIGN KEY ("programId", "inspectionId") REFERENCES "Inspection"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Scorecard" ADD CONSTRAINT "Scorecard_programId_criteriaId_criteriaVersion_fkey" FOREIGN KEY ("programId", "criteriaId", "criteriaVersion") REFERENCES "CriteriaSet"("programId", "id", "version") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Finding" ADD CONSTRAINT "Finding_programId_inspectionId_fkey" FOREIGN KEY ("programId", "inspectionId") REFERENCES "Scorecard"("programId", "inspectionId") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SignInSession" ADD CONSTRAINT "SignInSession_programId_personId_fkey" FOREIGN KEY ("programId", "personId") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SkillSummary" ADD CONSTRAINT "SkillSummary_programId_studentId_fkey" FOREIGN KEY ("programId", "studentId") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SkillSummary" ADD CONSTRAINT "SkillSummary_programId_exerciseId_fkey" FOREIGN KEY ("programId", "exerciseId") REFERENCES "Exercise"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Term" ADD CONSTRAINT "Term_programId_fkey" FOREIGN KEY ("programId") REFERENCES "Program"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TestAttempt" ADD CONSTRAINT "TestAttempt_programId_classId_fkey" FOREIGN KEY ("programId", "classId") REFERENCES "Class"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TestAttempt" ADD CONSTRAINT "TestAttempt_programId_studentId_fkey" FOREIGN KEY ("programId", "studentId") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TestAttempt" ADD CONSTRAINT "TestAttempt_programId_witnessId_fkey" FOREIGN KEY ("programId", "witnessId") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TestAttempt" ADD CONSTRAINT "TestAttempt_programId_exerciseId_exerciseVersion_fkey" FOREIGN KEY ("programId", "exerciseId", "exerciseVersion") REFERENCES "ExerciseVersion"("programId", "exerciseId", "version") ON DELETE RESTRICT ON UPDATE CASCADE;

-- What was judged stays as it was judged: these rows are only ever added.
CREATE FUNCTION "refuse_change"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'Rows of % are only ever added.', TG_TABLE_NAME;
END
$$;

CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "AuditEvent" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "Scorecard" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "Finding" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "CriteriaSet" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "ExerciseVersion" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OF "readings", "couponId", "inspectorId", "kind", "revision" OR DELETE ON "Inspection"
  FOR EACH ROW EXECUTE FUNCTION "refuse_change"();

-- CreateTable
CREATE TABLE "CriteriaRetirement" (
    "programId" UUID NOT NULL,
    "criteriaId" TEXT NOT NULL,
    "criteriaVersion" INTEGER NOT NULL,
    "retiredById" UUID NOT NULL,
    "retiredAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "CriteriaRetirement_pkey" PRIMARY KEY ("programId","criteriaId","criteriaVersion")
);

-- AddForeignKey
ALTER TABLE "CriteriaRetirement" ADD CONSTRAINT "CriteriaRetirement_programId_fkey" FOREIGN KEY ("programId") REFERENCES "Program"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CriteriaRetirement" ADD CONSTRAINT "CriteriaRetirement_programId_criteriaId_criteriaVersion_fkey" FOREIGN KEY ("programId", "criteriaId", "criteriaVersion") REFERENCES "CriteriaSet"("programId", "id", "version") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CriteriaRetirement" ADD CONSTRAINT "CriteriaRetirement_programId_retiredById_fkey" FOREIGN KEY ("programId", "retiredById") REFERENCES "Person"("programId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- Of an inspection only the moment it was superseded may still be written; everything else stays as it was submitted.
DROP TRIGGER "only_added" ON "Inspection";
CREATE TRIGGER "only_added" BEFORE UPDATE OF "programId", "id", "couponId", "inspectorId", "kind", "revision", "readings", "submittedAt" OR DELETE ON "Inspection"
  FOR EACH ROW EXECUTE FUNCTION "refuse_change"();

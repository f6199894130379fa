package gradepost.route.audit;

/**
 * Something that a competent person should look at.
 *
 * @param element the very record that it concerns, as the reader made it
 * @param key the key of that record; empty text where the whole record is meant
 * @param what what was found, as a sentence without its full stop; unique among the findings of a
 *     rule, since it is by these words that a finding is accepted
 * @param bound what would be right, with its unit
 * @param maybe what may have been meant; empty text where nothing comes near
 */
public record AuditFinding(
    AuditRule rule, Object element, String key, String what, String bound, String maybe) {}

package org.mainsgate.verdict;

import java.time.LocalDate;

/**
 * A person's decision to release a hold.
 *
 * @param entry the entry's id
 * @param check the check
 * @param thing the thing judged
 * @param by who decided
 * @param competence in that person's own words
 * @param because the reason given
 * @param restriction what it is limited to, empty if nothing
 * @param on the date of the visit
 */
public record Judged(
    String entry,
    String check,
    String thing,
    String by,
    String competence,
    String because,
    String restriction,
    LocalDate on) {}

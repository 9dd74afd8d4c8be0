package org.mainsgate.report;

import org.mainsgate.agenda.Agenda;
import org.mainsgate.verdict.Evidence;

/**
 * An instrument with what is to do next at it.
 *
 * @param dossier the instrument and its verdict
 * @param evidence what is in force
 * @param agenda what is still open
 */
public record Outlook(Dossier dossier, Evidence evidence, Agenda agenda) {}

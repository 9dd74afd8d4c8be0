package org.mainsgate.report;

import org.mainsgate.agenda.Agenda;

/**
 * An instrument with what is to do next at it.
 *
 * @param dossier the instrument and its verdict
 * @param agenda what is still open
 */
public record Outlook(Dossier dossier, Agenda agenda) {}

/**
 * A bench opened together with its rules, ready to judge: the way of the data through the rooms.
 *
 * <p>It knows no command, no page and no clock. Commands judge a bench on disk here; a sealed
 * file's record is judged here again, by the same way.
 *
 * <p>For example: {@code Desk.open(folder, new Shelf(), complaints)}, then {@code
 * desk.sight("BR-07", setting)}.
 */
@NullMarked
package org.mainsgate.desk;

import org.jspecify.annotations.NullMarked;

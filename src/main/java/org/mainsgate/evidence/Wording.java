package org.mainsgate.evidence;

/**
 * What is said where a field of the record has not its shape: what is wrong, then what is right.
 */
final class Wording {
  static final int SHORT = 200;
  static final int LONG = 2000;

  static final String FORMAT_IS = "1";
  static final String FORMAT = "unknown format {typed}|`1`";
  static final String SHORT_TEXT = "{typed} is empty or too long|1 to 200 characters";
  static final String LONG_TEXT = "a note that is too long|at most 2000 characters";

  static final String NAME =
      "{typed} can't be a name here|1 to 32 of `A` to `Z`, `a` to `z`, `0` to `9`, `.`, `_`, `-`,"
          + " a letter or digit first";

  static final String INITIALS_ARE = "[A-Za-z0-9]{1,8}";
  static final String INITIALS = "{typed} can't be initials|1 to 8 letters or digits";

  static final String UID_IS = "[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}";
  static final String UID =
      "{typed} is no UUID|32 digits of `0` to `9` and `a` to `f`, grouped 8-4-4-4-12";

  static final String HASH_IS = "[0-9a-f]{64}";
  static final String HASH = "{typed} is no SHA-256|64 digits of `0` to `9` and `a` to `f`";

  private Wording() {}
}

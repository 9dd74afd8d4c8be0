package org.mainsgate.signature;

import java.io.IOException;

/** Whoever answers a request for a time-stamp (RFC 3161). */
@FunctionalInterface
public interface TimeStampAuthority {

  /**
   * Asks.
   *
   * @param request the DER of a TimeStampReq
   * @return the DER of a TimeStampResp
   * @throws IOException if there is no answer
   */
  byte[] ask(byte[] request) throws IOException;
}

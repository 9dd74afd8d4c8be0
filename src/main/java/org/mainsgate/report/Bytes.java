package org.mainsgate.report;

import com.openhtmltopdf.extend.FSStream;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;

/**
 * Something that a page refers to, held in memory.
 *
 * @param content its bytes
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record Bytes(byte[] content) implements FSStream {

  @Override
  public InputStream getStream() {
    return new ByteArrayInputStream(content);
  }

  @Override
  public Reader getReader() {
    return new InputStreamReader(getStream(), StandardCharsets.UTF_8);
  }
}

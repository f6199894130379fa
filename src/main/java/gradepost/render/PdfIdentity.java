package gradepost.render;

import gradepost.briefing.Printable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.TimeZone;
import java.util.regex.Pattern;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.common.PDMetadata;

/** Dates and ids that come from the issue, so that the same issue gives the same bytes. */
final class PdfIdentity {
  private static final Pattern CREATED =
      Pattern.compile("<xmp:(CreateDate|ModifyDate)>[^<]*</xmp:");

  private PdfIdentity() {}

  static void stamp(PDDocument document, Printable briefing) throws IOException {
    Calendar issued = GregorianCalendar.from(briefing.issue().issued().atZone(ZoneOffset.UTC));
    issued.setTimeZone(TimeZone.getTimeZone("UTC"));
    PDDocumentInformation information = document.getDocumentInformation();
    information.setCreationDate(issued);
    if (information.getModificationDate() != null) {
      information.setModificationDate(issued);
    }
    document.setDocumentInformation(information);
    PDMetadata metadata = document.getDocumentCatalog().getMetadata();
    try (InputStream in = metadata.exportXMPMetadata()) {
      // What writes it ends lines as the machine does.
      String xmp = new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n");
      String moment = briefing.issue().issued().withNano(0).atOffset(ZoneOffset.UTC).toString();
      String whole = moment.length() == 17 ? moment.replace("Z", ":00Z") : moment;
      metadata.importXMPMetadata(
          CREATED
              .matcher(xmp)
              .replaceAll("<xmp:$1>" + whole.replace("Z", "+00:00") + "</xmp:")
              .getBytes(StandardCharsets.UTF_8));
    }
    document.setDocumentId(id(briefing.issue().fingerprint() + briefing.title()));
  }

  /** FNV-1a over the text: stable, and all that an id needs. */
  static long id(String text) {
    long hash = 0xcbf29ce484222325L;
    for (byte b : text.getBytes(StandardCharsets.UTF_8)) {
      hash = (hash ^ (b & 0xff)) * 0x100000001b3L;
    }
    return hash;
  }
}

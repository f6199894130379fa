package gradepost.app.export;

import biweekly.Biweekly;
import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.property.DateEnd;
import biweekly.property.DateStart;
import biweekly.util.ICalDate;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Date;
import java.util.UUID;

/**
 * What begins or ends, as an iCalendar file (RFC 5545). The register has no zone: hours are those
 * of the wall clock where the calendar is read.
 */
public final class NoticeCalendar {
  private final ICalendar calendar = new ICalendar();
  private final Clock clock;

  /**
   * @param clock for the moment at which the file was made
   */
  public NoticeCalendar(Clock clock) {
    this.clock = clock;
    calendar.setProductId("-//gradepost//notices//EN");
  }

  /**
   * Something that happens at a moment.
   *
   * @param name the same each time the file is made, so that a calendar knows the event again
   */
  public void add(String name, LocalDateTime when, String summary, String description) {
    VEvent event = new VEvent();
    event.setUid(UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8)).toString());
    event.setDateTimeStamp(Date.from(clock.instant()));
    Date moment = Date.from(when.atZone(ZoneId.systemDefault()).toInstant());
    DateStart start = new DateStart(new ICalDate(moment, true));
    DateEnd end = new DateEnd(new ICalDate(moment, true));
    event.setDateStart(start);
    event.setDateEnd(end);
    calendar.getTimezoneInfo().setFloating(start, true);
    calendar.getTimezoneInfo().setFloating(end, true);
    event.setSummary(summary);
    event.setDescription(description);
    calendar.addEvent(event);
  }

  /** The file. */
  public String text() {
    return Biweekly.write(calendar).version(ICalVersion.V2_0).go();
  }
}

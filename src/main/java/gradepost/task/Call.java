package gradepost.task;

import gradepost.route.station.Platform;
import gradepost.route.station.Station;
import gradepost.units.Span;

/** A booked stop of this train. */
public record Call(Station station, Platform platform, Span dwell) {}

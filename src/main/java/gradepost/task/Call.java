package gradepost.task;

import gradepost.route.Platform;
import gradepost.route.Station;
import gradepost.units.Span;

/** A booked stop of this train. */
public record Call(Station station, Platform platform, Span dwell) {}

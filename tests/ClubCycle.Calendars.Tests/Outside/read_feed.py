"""Prints what the icalendar library makes of a calendar file: one tab-separated line an event."""
import sys
from datetime import timezone

import icalendar

with open(sys.argv[1], "rb") as file:
    calendar = icalendar.Calendar.from_ical(file.read())

for event in calendar.walk("VEVENT"):
    moments = [event.decoded(name).astimezone(timezone.utc).strftime("%Y-%m-%dT%H:%M:%SZ") for name in ("DTSTART", "DTEND")]
    print("\t".join([str(event["UID"]), *moments, str(event["SEQUENCE"]), str(event["STATUS"]), str(event["SUMMARY"])]))

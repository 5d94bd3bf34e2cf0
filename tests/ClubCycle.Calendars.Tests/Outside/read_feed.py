"""Prints what the icalendar library makes of calendar files: one tab-separated line an event."""
import sys
from datetime import datetime, timedelta, timezone

import icalendar


def moment(value):
    if isinstance(value, datetime):
        return value.astimezone(timezone.utc).strftime("%Y-%m-%dT%H:%M:%SZ")
    return value.strftime("%Y-%m-%d")


for number, path in enumerate(sys.argv[1:]):
    with open(path, "rb") as file:
        calendar = icalendar.Calendar.from_ical(file.read())
    for event in calendar.walk("VEVENT"):
        categories = [str(c) for c in event["CATEGORIES"].cats] if "CATEGORIES" in event else []
        alarms = [str(-alarm.decoded("TRIGGER") // timedelta(minutes=1)) for alarm in event.walk("VALARM")]
        print("\t".join([
            str(number), str(event["UID"]), moment(event.decoded("DTSTART")), moment(event.decoded("DTEND")), str(event["SEQUENCE"]),
            moment(event.decoded("LAST-MODIFIED")), str(event["STATUS"]), "|".join(categories), ",".join(alarms), str(event.get("LOCATION", "")), str(event["SUMMARY"]),
        ]))

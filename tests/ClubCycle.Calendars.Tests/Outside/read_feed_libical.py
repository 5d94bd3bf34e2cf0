"""Prints what libical (C) makes of calendar files: one tab-separated line an event."""
import ctypes
import re
import sys

ical = ctypes.CDLL("libical.so.3")
pointer, text, number = ctypes.c_void_p, ctypes.c_char_p, ctypes.c_int
for name, result, arguments in [
    ("icalparser_parse_string", pointer, [text]),
    ("icalcomponent_string_to_kind", number, [text]),
    ("icalproperty_string_to_kind", number, [text]),
    ("icalcomponent_get_first_component", pointer, [pointer, number]),
    ("icalcomponent_get_next_component", pointer, [pointer, number]),
    ("icalcomponent_get_first_property", pointer, [pointer, number]),
    ("icalcomponent_get_next_property", pointer, [pointer, number]),
    ("icalcomponent_count_errors", number, [pointer]),
    ("icalproperty_get_value", pointer, [pointer]),
    ("icalproperty_get_value_as_string", text, [pointer]),
    ("icalvalue_get_text", text, [pointer]),
    ("icalcomponent_free", None, [pointer]),
]:
    function = getattr(ical, name)
    function.restype, function.argtypes = result, arguments


def parts(component, name):
    kind = ical.icalcomponent_string_to_kind(name)
    part = ical.icalcomponent_get_first_component(component, kind)
    while part:
        yield part
        part = ical.icalcomponent_get_next_component(component, kind)


def properties(component, name):
    kind = ical.icalproperty_string_to_kind(name)
    one = ical.icalcomponent_get_first_property(component, kind)
    while one:
        yield one
        one = ical.icalcomponent_get_next_property(component, kind)


def raw(component, name):
    return next((ical.icalproperty_get_value_as_string(p).decode() for p in properties(component, name)), "")


def texts(component, name):
    return [ical.icalvalue_get_text(ical.icalproperty_get_value(p)).decode() for p in properties(component, name)]


def moment(value):
    return re.sub(r"^(\d{4})(\d\d)(\d\d)(?:T(\d\d)(\d\d)(\d\d)Z)?$", lambda m: "-".join(m.groups()[:3]) + (f"T{m[4]}:{m[5]}:{m[6]}Z" if m[4] else ""), value)


def minutes(trigger):
    sign, days, hours, mins = re.fullmatch(r"(-?)P(?:(\d+)D)?(?:T(?:(\d+)H)?(?:(\d+)M)?)?", trigger).groups()
    return str((int(days or 0) * 1440 + int(hours or 0) * 60 + int(mins or 0)) * (1 if sign else -1))


for index, path in enumerate(sys.argv[1:]):
    with open(path, "rb") as file:
        calendar = ical.icalparser_parse_string(file.read())
    if not calendar or ical.icalcomponent_count_errors(calendar):
        sys.exit(f"libical finds errors in {path}")
    for event in parts(calendar, b"VEVENT"):
        print("\t".join([
            str(index), texts(event, b"UID")[0], moment(raw(event, b"DTSTART")), moment(raw(event, b"DTEND")), raw(event, b"SEQUENCE"), moment(raw(event, b"LAST-MODIFIED")),
            raw(event, b"STATUS"), "|".join(texts(event, b"CATEGORIES")), ",".join(minutes(raw(a, b"TRIGGER")) for a in parts(event, b"VALARM")),
            "".join(texts(event, b"LOCATION")), texts(event, b"SUMMARY")[0],
        ]))
    ical.icalcomponent_free(calendar)

"""Reads a calendar.ics with an independent library and compares it event by event with the
result.json beside it; then its bytes with what RFC 5545 says of lines.
Usage: check_calendar.py FOLDER"""
import collections
import datetime
import json
import pathlib
import re
import sys
import zoneinfo

import icalendar

folder = pathlib.Path(sys.argv[1])
result = json.loads((folder / "result.json").read_text())
raw = (folder / "calendar.ics").read_bytes()
failures = []


def check(good, what):
    if not good:
        failures.append(what)


# The bytes: CRLF alone, at most 75 octets a line, every line whole UTF-8.
check(raw.endswith(b"\r\n"), "the last line has no end")
check(b"\n" not in raw.replace(b"\r\n", b"") and b"\r" not in raw.replace(b"\r\n", b""), "a line end that is not CRLF")
for line in raw.split(b"\r\n"):
    check(len(line) <= 75, f"a line of {len(line)} octets: {line!r}")
    try:
        line.decode()
    except UnicodeDecodeError:
        check(False, f"a character is cut: {line!r}")
check(any(len(line) == 75 for line in raw.split(b"\r\n")), "nothing was long enough to fold")

calendar = icalendar.Calendar.from_ical(raw)
check(calendar["VERSION"] == "2.0" and "PRODID" in calendar, "the calendar's own properties")
check(str(calendar["NAME"]) == result["plan"], "the calendar's name")
events = list(calendar.walk("VEVENT"))
kinds = collections.defaultdict(list)
for event in events:
    kinds[str(event["CATEGORIES"].cats[0])].append(event)

uids = [str(event["UID"]) for event in events]
check(len(set(uids)) == len(uids), "two events have one UID")
first = datetime.datetime.fromisoformat(result["from"]).replace(tzinfo=datetime.timezone.utc)
for event in events:
    check(event["DTSTAMP"].dt == first, "DTSTAMP")
    check(int(event["SEQUENCE"]) == 0, "SEQUENCE")


def on(date, minutes):
    return datetime.datetime.fromisoformat(date) + datetime.timedelta(minutes=minutes)


# Trips: the stops of a day are one event of that day.
days = collections.defaultdict(list)
for visit in result["visits"]:
    days[visit["date"]].append(visit)
check(len(kinds["SHOPPING"]) == len(days), "number of trips")
for event, (date, visits) in zip(kinds["SHOPPING"], sorted(days.items())):
    day = datetime.date.fromisoformat(date)
    check(event["DTSTART"].dt == day and event["DTEND"].dt == day + datetime.timedelta(days=1), f"{date}: day of the trip")
    check(str(event["SUMMARY"]) == "Shopping: " + ", ".join(v["shop"] for v in visits), f"{date}: shops of the trip")
    for visit in visits:
        sum_ = f"{result['currency']['sign']}{visit['paid'] // 100}.{visit['paid'] % 100:02}"
        check(f"{visit['shop']}: " in str(event["DESCRIPTION"]) and sum_ in str(event["DESCRIPTION"]), f"{date}: sum at {visit['shop']}")

# Sessions: from when the work begins until it is done.
check(len(kinds["COOKING"]) == len(result["sessions"]), "number of sessions")
for event, session in zip(kinds["COOKING"], result["sessions"]):
    check(event["DTSTART"].dt == on(session["date"], session["from"]), f"{session['date']}: start of the session")
    check(event["DTEND"].dt == on(session["date"], session["from"] + session["length"]), f"{session['date']}: end of the session")
    for making in result["makings"]:
        if making["session"] == session["session"]:
            check(making["recipe"] in str(event["DESCRIPTION"]), f"{session['date']}: {making['recipe']} is not said")

# Reminders: at their time or in the evening, with an alarm just then.
check(len(kinds["KITCHEN"]) == len(result["reminders"]), "number of reminders")
for event, reminder in zip(kinds["KITCHEN"], result["reminders"]):
    clock = 18 * 60 if reminder["clock"] is None else reminder["clock"]
    check(event["DTSTART"].dt == on(reminder["date"], clock), f"time of '{reminder['what']}'")
    check(str(event["SUMMARY"]) == reminder["what"], f"text of '{reminder['what']}'")
    alarms = list(event.walk("VALARM"))
    check(len(alarms) == 1 and alarms[0]["TRIGGER"].dt == datetime.timedelta(0), f"alarm of '{reminder['what']}'")
    check(all(str(a["DESCRIPTION"]) == reminder["what"] and a["ACTION"] == "DISPLAY" for a in alarms), f"words of the alarm of '{reminder['what']}'")

# The kitchen's clock on both sides of a change of time: no time names a zone or UTC, so each is
# what a clock on the wall says, also where the clocks go forward on 14 March 2027.
zone = zoneinfo.ZoneInfo("America/Chicago")
timed = [e["DTSTART"].dt for e in kinds["COOKING"] + kinds["KITCHEN"]]
check(all(time.tzinfo is None for time in timed), "a time has a zone")
check(not re.search(rb"^DT(START|END)[^\r]*(TZID|Z\r)", raw, re.M), "a time names a zone")
change = datetime.datetime(2027, 3, 14, 2)
offsets = {time.replace(tzinfo=zone).utcoffset() for time in timed}
check(any(t < change for t in timed) and any(t > change for t in timed) and len(offsets) == 2, "no events on both sides of the change of time")

for failure in failures:
    print(failure)
print(f"{len(events)} events, {len(failures)} failures")
sys.exit(bool(failures))

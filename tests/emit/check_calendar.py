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
check(str(calendar["NAME"]) == result["plan"] and str(calendar["X-WR-CALNAME"]) == result["plan"], "the calendar's name")
events = list(calendar.walk("VEVENT"))
kinds = collections.defaultdict(list)
for event in events:
    kinds[str(event["UID"]).split("-")[0]].append(event)

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
check(len(kinds["trip"]) == len(days), "number of trips")
for event, (date, visits) in zip(kinds["trip"], sorted(days.items())):
    day = datetime.date.fromisoformat(date)
    check(event["DTSTART"].dt == day and event["DTEND"].dt == day + datetime.timedelta(days=1), f"{date}: day of the trip")
    check(str(event["SUMMARY"]) == "Shopping: " + ", ".join(v["shop"] for v in visits), f"{date}: shops of the trip")
    for visit in visits:
        sum_ = f"{result['currency']['sign']}{visit['paid'] // 100}.{visit['paid'] % 100:02}"
        check(f"{visit['shop']}: " in str(event["DESCRIPTION"]) and sum_ in str(event["DESCRIPTION"]), f"{date}: sum at {visit['shop']}")

# Sessions: from when the work begins until it is done.
check(len(kinds["session"]) == len(result["sessions"]), "number of sessions")
for event, session in zip(kinds["session"], result["sessions"]):
    check(event["DTSTART"].dt == on(session["date"], session["from"]), f"{session['date']}: start of the session")
    check(event["DTEND"].dt == on(session["date"], session["from"] + session["length"]), f"{session['date']}: end of the session")
    for making in result["makings"]:
        if making["session"] == session["session"]:
            check(making["recipe"] in str(event["DESCRIPTION"]), f"{session['date']}: {making['recipe']} is not said")

# What is cooked for one moment is one event, from the first start on.
cooked = collections.defaultdict(list)
for cook in result["cooking"]:
    timed = any(step["hands_on"] or step["then"] for part in result["cooking"] if part["making"] == cook["making"] for step in part["steps"])
    if cook["ready"] > cook["start"] or not timed:
        cooked[cook["date"], cook["done"] if cook["ahead"] else cook["ready"]].append(cook)
check(len(kinds["cook"]) == len(cooked), f"{len(kinds['cook'])} events of cooking for {len(cooked)} times")
for event, ((date, ready), dishes) in zip(kinds["cook"], sorted(cooked.items())):
    check(event["DTSTART"].dt == on(date, min([ready] + [cook["start"] for cook in dishes])), f"{date}: start of cooking")
    for cook in dishes:
        name = result["makings"][cook["making"]]["recipe"]
        check(name in str(event["SUMMARY"]) and name in str(event["DESCRIPTION"]), f"{date}: {name} is not said")
    check(not list(event.walk("VALARM")), f"{date}: an alarm of cooking")

# Meals
check(len(kinds["meal"]) == len(result["meals"]), "number of meals")
for event, meal in zip(kinds["meal"], result["meals"]):
    check(str(event["DTSTART"].dt.date()) == meal["date"], f"{meal['date']}: day of {meal['meal']}")
    for dish in meal["dishes"]:
        check(dish["name"] in str(event["SUMMARY"]), f"{meal['date']}: {dish['name']}")

# Reminders: at the times that the schedule has; what has none or a late one, in one event of the
# evening, with one alarm.
day_ones = [r for r in result["reminders"] if r["clock"] is not None and r["clock"] < 19 * 60]
evenings = collections.defaultdict(list)
for reminder in result["reminders"]:
    if reminder not in day_ones:
        evenings[reminder["date"]].append(reminder)
check(len(kinds["evening"]) == len(evenings), "number of evenings")
for event, (date, things) in zip(kinds["evening"], sorted(evenings.items())):
    check(event["DTSTART"].dt == on(date, 20 * 60), f"{date}: time of the evening")
    for thing in things:
        at = "" if thing["clock"] is None else f"{thing['clock'] // 60:02}:{thing['clock'] % 60:02} "
        check(at + thing["what"] in str(event["DESCRIPTION"]).split("\n"), f"{date}: '{thing['what']}' is not said")
    check(len(list(event.walk("VALARM"))) == 1, f"{date}: alarms of the evening")
moments = [event for event in events if str(event["CATEGORIES"].cats[0]) == "KITCHEN" and event not in kinds["evening"]]
check(len(moments) == len(day_ones), "number of reminders by day")
for event, reminder in zip(moments, day_ones):
    check(event["DTSTART"].dt == on(reminder["date"], reminder["clock"]), f"time of '{reminder['what']}'")
    check(str(event["SUMMARY"]) == reminder["what"], f"text of '{reminder['what']}'")
    alarms = list(event.walk("VALARM"))
    check(len(alarms) == 1 and alarms[0]["TRIGGER"].dt == datetime.timedelta(0), f"alarm of '{reminder['what']}'")

# The kitchen's clock on both sides of a change of time: no time names a zone or UTC, so each is
# what a clock on the wall says, also where the clocks go forward on 14 March 2027.
zone = zoneinfo.ZoneInfo("America/Chicago")
timed = [e["DTSTART"].dt for e in events if isinstance(e["DTSTART"].dt, datetime.datetime)]
check(all(time.tzinfo is None for time in timed), "a time has a zone")
check(not re.search(rb"^DT(START|END)[^\r]*(TZID|Z\r)", raw, re.M), "a time names a zone")
change = datetime.datetime(2027, 3, 14, 2)
offsets = {time.replace(tzinfo=zone).utcoffset() for time in timed}
check(any(t < change for t in timed) and any(t > change for t in timed) and len(offsets) == 2, "no events on both sides of the change of time")

for failure in failures:
    print(failure)
print(f"{len(events)} events, {len(failures)} failures")
sys.exit(bool(failures))

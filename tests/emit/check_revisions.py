"""Compiles a plan again and again into one folder and compares the calendars with an independent
library: what is the same keeps its bytes; what changes keeps its UID, has a SEQUENCE one higher and
a later DTSTAMP (RFC 5545, 3.8.7.4 and 3.8.7.2).
Usage: check_revisions.py PROGRAM FOLDER, where FOLDER has the demo with a dish more."""
import pathlib
import subprocess
import sys

import icalendar

program, place = sys.argv[1], pathlib.Path(sys.argv[2])
calendar = place / "again" / "calendar.ics"
failures = []


def build(house):
    subprocess.run([program, "build", "plans/2027-03.yaml", "--out", place / "again"], cwd=house, check=True, capture_output=True)
    return calendar.read_bytes()


def events(raw):
    out = {}
    for event in icalendar.Calendar.from_ical(raw).walk("VEVENT"):
        said = [(name, getattr(value, "to_ical", lambda v=value: v)()) for name, value in event.property_items() if name not in ("DTSTAMP", "SEQUENCE")]
        out[str(event["UID"])] = (said, int(event["SEQUENCE"]), event["DTSTAMP"].dt)
    return out


def check(good, what):
    if not good:
        failures.append(what)


first = build(".")
check(build(".") == first, "the same plan gave other bytes the second time")
second = build(place)
third = build(place)
check(third == second, "a plan that was not changed again gave other bytes")
before, after = events(first), events(second)
check(all(sequence == 0 for _, sequence, _ in before.values()), "a first calendar counts from another number than 0")
latest = max(stamp for _, _, stamp in before.values())
changed = []
for uid, (said, sequence, stamp) in after.items():
    if uid not in before:
        check(sequence == 0 and stamp > latest, f"{uid}: a new event")
    elif said == before[uid][0]:
        check((sequence, stamp) == before[uid][1:], f"{uid}: its revision changed, and nothing else")
    else:
        changed.append(uid)
        check(sequence == before[uid][1] + 1 and stamp > latest, f"{uid}: a change without a revision")
# A dish more on one day, bought on a trip before it: its meal, its cooking, the trip; perhaps more in
# an evening. Nothing else has moved to another's UID.
check(any(uid.startswith("meal-2027-03-30") for uid in changed), "the changed meal is not among the changed events")
check(len(changed) <= 8, f"{len(changed)} events changed: {changed}")
check(len(set(before) - set(after)) <= 2, f"gone: {sorted(set(before) - set(after))}")
# A calendar of somebody else's in that place is no revision of ours.
calendar.write_bytes(second.replace(b"-//manciple//", b"-//another//").replace(b"SEQUENCE:0", b"SEQUENCE:7"))
check(all(sequence == 0 for _, sequence, _ in events(build(place)).values()), "another's calendar was taken for ours")

for failure in failures:
    print(failure)
print(f"{len(changed)} of {len(after)} events changed, {len(failures)} failures")
sys.exit(bool(failures))

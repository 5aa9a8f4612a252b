"""Checks every minute of every day of a plan by itself: hands, places on appliances, temperatures of ovens, waiting,
soaking, marinating, thawing, cooling; and that what dishes leave over is there and good. Reads result.json and the house's own files, and shares no code with the compiler.

Usage: check_clock.py HOUSE FOLDER

Rules, where a recipe does not say its own:
- an oven needs a minute for every 20 F up; it is hot for 20 minutes after something was in it (common practice);
- what rises, and what was on the heat, waits for at most half an hour for its next step, the rest for two hours (USDA
  FSIS: perishable food is not left out for longer);
- what was hot and is stored is at 70 F two hours after it came off the heat (FDA Food Code 2022, 3-501.14);
- a large piece thaws for a day for each 4 lb (USDA FSIS, The Big Thaw)."""
import collections
import datetime
import json
import pathlib
import re
import sys

import eaters

house, folder = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2])
result = json.loads((folder / "result.json").read_text())
made = result["makings"]
failures = []
DAY = 24 * 60
SOON, TWO_HOURS, AS_HOT, STAYS_HOT = 30, 120, 20, 20


def check(good, what):
    if not good:
        failures.append(what)


def minutes(text):
    parts = re.findall(r"(\d+(?:\.\d+)?)\s*(d|h|m)", str(text))
    return round(sum(float(n) * {"d": DAY, "h": 60, "m": 1}[unit] for n, unit in parts))


def written(name):
    """What somebody has otherwise in a dish begins with the recipe's name: "fish-tacos-with-tofu"."""
    path = house / "recipes" / f"{name}.yaml"
    return eaters.load(path) if path.exists() else written(name[: name.rindex("-")])


recipes = {m["file"]: written(m["file"]) for m in made}
plan_start = datetime.date.fromisoformat(result["from"])


def absolute(date, clock):
    return (datetime.date.fromisoformat(date) - plan_start).days * DAY + clock


def steps_of(making):
    return recipes[made[making]["file"]].get("method", [])


# Everything that is done: (from, until, hands, appliance, places, temperature, what, is preheating)
Done = collections.namedtuple("Done", "start end hands appliance places heat what preheat")
done = []
sittings = []  # (making, [(step, start, end)]) in their order


def kind(making, step):
    """The words of a step, the appliance and its own limit for waiting."""
    said = steps_of(making)[step]
    if isinstance(said, str):
        return said, "", None
    return said["do"], said.get("on", ""), minutes(said["wait"]) if "wait" in said else None


by_making = collections.defaultdict(list)
for session in result["sessions"]:
    base = absolute(session["date"], session["from"])
    for t in session["tasks"]:
        at = base + t["start"]
        free = at + t["hands_on"]
        preheat = t["kind"] == "preheat"
        for start, end, hands in ((at, free, 1), (free, free + t["then"], 0)):
            if end > start:
                done.append(Done(start, end, hands, t["appliance"], t["places"], t["fahrenheit"], t["what"], preheat))
        check(t["by"] is None or t["start"] + t["hands_on"] + t["then"] <= t["by"], f"{session['date']}: {t['what']} is done too late")
        if t["making"] is not None and t["kind"] in ("cook", "cool", "store"):
            # Whoever has handled raw meat washes up first.
            washed = [w["hands_on"] for w in session["tasks"] if w["kind"] == "wash" and w["making"] == t["making"] and base + w["start"] == free]
            by_making[t["making"]].append((t["step"], at, free + max([t["then"]] + washed), t["kind"]))
for cook in result["cooking"]:
    for s in cook["steps"]:
        at = absolute(cook["date"], s["start"])
        free = at + s["hands_on"]
        name = f"{made[cook['making']]['recipe']}: {s['what']}"
        if s["preheat"]:
            done.append(Done(at - s["preheat"], at, 0, s["appliance"], s["places"], s["fahrenheit"], name, True))
        for start, end, hands in ((at, free, 1), (free, free + s["then"], 0)):
            if end > start:
                done.append(Done(start, end, hands, s["appliance"], s["places"], s["fahrenheit"], name, False))
        if s["wash"]:
            done.append(Done(free, free + s["wash"], 1, "", 1, None, name + ": washing", False))
        by_making[cook["making"]].append((s["step"], at, max(free + s["then"], free + s["wash"]), "cook"))

# Hands and places, minute by minute.
busy = collections.defaultdict(list)
for one in done:
    for minute in range(one.start, one.end):
        busy[minute].append(one)
cooks = collections.defaultdict(lambda: 1)
for shift in result["shifts"]:
    for clock in range(shift["from"], shift["until"]):
        cooks[absolute(shift["date"], clock)] = max(1, sum(c["from"] <= clock < c["until"] for c in shift["cooks"]))
for session in result["sessions"]:
    for minute in range(absolute(session["date"], session["from"]), absolute(session["date"], session["from"]) + session["length"]):
        cooks[minute] = session["cooks"]


def when(minute):
    day, clock = divmod(minute, DAY)
    return f"{plan_start + datetime.timedelta(day)} {clock // 60:02}:{clock % 60:02}"


said = set()
for minute in sorted(busy):
    at_work = [one.what for one in busy[minute] if one.hands]
    if len(at_work) > cooks[minute] and tuple(at_work) not in said:
        said.add(tuple(at_work))
        check(False, f"{when(minute)}: {cooks[minute]} for {at_work}")
    places = collections.Counter()
    heats = collections.defaultdict(set)
    for one in busy[minute]:
        if one.appliance:
            places[one.appliance] += one.places
            if one.heat is not None:
                heats[one.appliance].add(one.heat)
    for appliance, n in places.items():
        key = (appliance, tuple(one.what for one in busy[minute] if one.appliance == appliance))
        wrong = n > result["appliances"].get(appliance, 0) or heats[appliance] and max(heats[appliance]) - min(heats[appliance]) > AS_HOT
        if wrong and key not in said:
            said.add(key)
            check(False, f"{when(minute)}: {n} on {appliance} at {sorted(heats[appliance])}: {list(key[1])}")

# Nobody is at two things, and no more pots and trays are used than the house has, where it says.
at_work = collections.defaultdict(list)
vessels = collections.Counter()
for session in result["sessions"]:
    base = absolute(session["date"], session["from"])
    for t in session["tasks"]:
        start, end = base + t["start"], base + t["start"] + t["hands_on"]
        if t["cook"] is not None and t["cook"] < len(session["names"]):
            at_work[session["names"][t["cook"]]].append((start, end, t["what"]))
        for minute in range(start, end + t["then"]):
            vessels[minute, t["vessel"]] += t["vessels"]
for cook in result["cooking"]:
    for s in cook["steps"]:
        start = absolute(cook["date"], s["start"])
        if s["who"]:
            at_work[s["who"]].append((start, start + s["hands_on"] + s["wash"], s["what"]))
        for minute in range(start, start + s["hands_on"] + s["then"]):
            vessels[minute, s["vessel"]] += s["vessels"]
for who, stretches in at_work.items():
    stretches.sort()
    for one, later in zip(stretches, stretches[1:]):
        check(one[1] <= later[0], f"{when(later[0])}: {who} is at '{one[2]}' and '{later[2]}'")
for (minute, vessel), n in vessels.items():
    check(n <= result["appliances"].get(vessel, n), f"{when(minute)}: {n} of {vessel}")

# What goes into an oven finds it hot.
ovens = sorted((one for one in done if one.heat is not None and one.appliance), key=lambda one: one.start)
for one in ovens:
    if one.preheat:
        continue
    hot = any(o is not one and o.appliance == one.appliance and abs(o.heat - one.heat) <= AS_HOT and o.start < one.start and o.end >= one.start - STAYS_HOT
              for o in ovens)
    check(hot, f"{when(one.start)}: the {one.appliance} is not at {one.heat} F for {one.what}")
for one in ovens:
    if one.preheat:
        before = [o for o in ovens if o is not one and o.appliance == one.appliance and one.start - STAYS_HOT <= o.end <= one.start]
        coldest = min([70] + [o.heat for o in before])
        least = 5 if any(o.heat > one.heat for o in before) else min(((one.heat - o.heat) / 20 for o in before if o.heat <= one.heat), default=(one.heat - coldest) / 20)
        check(one.end - one.start >= least - 1e-9, f"{when(one.start)}: {one.end - one.start} minutes to heat the {one.appliance} to {one.heat} F for {one.what}")

# Steps in their order, and no wait longer than it may be.
HOT = re.compile(r"burner|oven|hob|cooker|stove|grill|fryer|microwave|kiln|plate")
for making, steps in by_making.items():
    cooked = sorted((s for s in steps if s[0] is not None and s[3] != "store"), key=lambda s: s[0])
    marinade = minutes(recipes[made[making]["file"]].get("marinate", 0))
    heat = [i for i, s in enumerate(cooked) if HOT.search(kind(making, s[0])[1])]
    first_hot = heat[0] if heat else len(cooked)
    for i, (one, later) in enumerate(zip(cooked, cooked[1:])):
        check(one[2] <= later[1], f"{made[making]['recipe']}: step {later[0]} begins before step {one[0]} has ended")
        words, appliance, own = kind(making, one[0])
        gap = later[1] - one[2]
        if marinade and i + 1 == first_hot:
            check(gap >= marinade, f"{made[making]['recipe']} of {made[making]['date']}: stands {gap} minutes, not {marinade}")
            continue
        chills = re.search(r"chill|overnight|in the fridge|freeze", words, re.I)
        limit = own if own is not None else None if chills else SOON if HOT.search(appliance) or re.search(r"\bris(e|es|ing)|\bproof|\bprove", words, re.I) else TWO_HOURS
        check(limit is None or gap <= limit, f"{made[making]['recipe']} of {made[making]['date']}: waits {gap} minutes after '{words}', at most {limit}")
    # Off the heat, and cold in time.
    cold = [s for s in steps if s[3] == "store"]
    if cold and heat:
        off = cooked[heat[-1]][2]
        check(cold[0][2] <= off + TWO_HOURS, f"{made[making]['recipe']} of {made[making]['date']}: stored {cold[0][2] - off} minutes after it was hot")

# What soaks or marinates has done so when its cooking starts; what a session makes is there when it is used.
begun = {}
for making, steps in by_making.items():
    begun[making] = min(s[1] for s in steps)
sessions = {s["session"]: s for s in result["sessions"]}
for r in result["reminders"]:
    if r["lasts"] is None:
        continue
    making = r["making"]
    over = absolute(r["date"], r["clock"]) + r["lasts"]
    marinade = recipes[made[making]["file"]].get("marinate")
    check(r["kind"] != "marinate" or r["lasts"] == minutes(marinade), f"{r['what']}: {marinade}")
    steps = [s for s in by_making.get(making, []) if s[3] == "cook"]
    hot = [s[1] for s in steps if s[0] is not None and HOT.search(kind(making, s[0])[1])]
    m = made[making]
    meals = [absolute(c["date"], 0) + DAY for c in m["for"]]
    if r["kind"] == "soak":
        starts = [s[1] for s in steps]
    else:
        starts = hot
    check(over <= min(starts + meals), f"{r['what']} ({r['date']} {r['clock']}): it is over {over - min(starts + meals)} minutes too late")
for i, m in enumerate(made):
    for c in m["for"]:
        if "making" not in c or c["making"] not in begun:
            continue
        # The last step is the first one that needs it, at the latest; a part is there when cooking begins.
        if by_making.get(i):
            ended = max(s[2] for s in by_making[i] if s[3] == "cook") if any(s[3] == "cook" for s in by_making[i]) else 0
            check(ended <= begun[c["making"]], f"{m['recipe']} of {m['date']} is made {ended - begun[c['making']]} minutes after {made[c['making']]['recipe']} of {c['date']} is begun")
# What a dish leaves over is there before it is taken, good, and gives its date to what it goes into.
for one in result["by_products"]:
    of = made[one["making"]]
    for part in one["for"]:
        into = made[part["making"]]
        words = f"{one['name']} of {of['recipe']} ({one['date']}) in {into['recipe']} ({part['date']})"
        check(part["date"] == into["date"] and one["date"] == of["date"] <= part["date"], f"{words}: it is not there")
        check(part["date"] <= (one["frozen_until"] if part["frozen"] else one["good_until"]), f"{words}: it is not good")
        if not part["frozen"] and not one["keeps_in_pantry"] and into["good_until"]:
            check(into["good_until"] <= one["good_until"], f"{words}: good for longer than that")
        if by_making.get(one["making"]) and part["making"] in begun:
            ended = max((s[2] for s in by_making[one["making"]] if s[3] == "cook"), default=0)
            check(ended <= begun[part["making"]], f"{words}: it is left over {ended - begun[part['making']]} minutes too late")
for use in result["uses"]:
    if use.get("cut_in") is not None and use.get("making") in begun:
        s = sessions[use["cut_in"]]
        words = made[use["making"]]["recipe"]
        stem = use["food"].split()[-1][:4]
        ends = [t["start"] + t["hands_on"] for t in s["tasks"] if t["kind"] == "cut" and words in t["for"] + t["what"] and stem in t["what"]]
        check(bool(ends), f"{use['food']} for {words} is cut nowhere")
        check(absolute(s["date"], s["from"]) + max(ends, default=0) <= begun[use["making"]], f"{use['food']} is cut in a session after {made[use['making']]['recipe']} is begun")

# What was frozen is taken out the day before, and a large piece earlier.
MONTHS = "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec".split()
for r in result["reminders"]:
    out = datetime.date.fromisoformat(r["date"])
    dates = re.findall(r"(\d+) (" + "|".join(MONTHS) + ")", r["what"])
    if r["kind"] == "thaw" and dates and "same day" not in r["what"] and not r["what"].startswith("Take "):
        eaten = datetime.date(out.year, MONTHS.index(dates[-1][1]) + 1, int(dates[-1][0]))
        eaten = eaten.replace(year=out.year + 1) if eaten < out else eaten
        weight = re.search(r"(\d+(?:\.\d+)?) (lb|kg)", r["what"].replace(",", "."))
        pounds = float(weight[1]) * (1 if weight[2] == "lb" else 2.2046) if weight else 0
        # Printed weights are rounded.
        check((eaten - out).days >= max(1, (pounds - 0.1) / 4), f"{r['what']}: thaws for {(eaten - out).days} days")

for failure in failures[:40]:
    print(failure)
print(f"{len(done)} stretches of work, {len(by_making)} makings checked minute by minute; {len(failures)} wrong")
sys.exit(1 if failures else 0)

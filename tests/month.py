"""Plays a month on a copy of a house: see month.sh. Shares no code with the program."""
import collections
import datetime
import json
import pathlib
import re
import subprocess
import sys

program, plan = sys.argv[1:3]
failures = []
steps = 0


def check(good, what):
    if not good:
        failures.append(what)


def run(*arguments, fails=False):
    global steps
    steps += 1
    done = subprocess.run([program, *arguments], capture_output=True, text=True)
    if (done.returncode != 0) != fails:
        print(f"manciple {' '.join(arguments)}: exit {done.returncode}\n{done.stdout}{done.stderr}")
        sys.exit(1)
    return done.stdout


def result():
    return json.loads(pathlib.Path("out/2027-03/result.json").read_text())


def day(text):
    return datetime.date.fromisoformat(text)


def conserved(of):
    """Per food: counted + bought = eaten + thrown away + there."""
    sums = collections.Counter()
    for move in of["moves"]:
        sums[move["food"]] += move["amount"] * (1 if move["what"] in ("counted", "bought") else -1)
    for one in of["there"]:
        if not one["cut"] and not one["given"]:
            sums[one["food"]] -= one["amount"]
    for food, rest in sums.items():
        check(abs(rest) < 1e-4, f"{rest:g} of {food} came from nowhere or went nowhere")
    return len(sums)


def receipts():
    out = {}
    for path in sorted(pathlib.Path("plans/receipts").glob("2027-03-*.yaml")):
        total = re.search(r"^total: ([0-9.]+)$", path.read_text(), re.M)
        out[path.name] = round(float(total[1]) * 100)
    return out


def build(as_of):
    """Builds and checks what must hold after every step."""
    run("build", plan, "--as-of", as_of)
    out = result()
    past = out["past"]
    check(past["until"] == as_of, f"as of {as_of}: until {past['until']}")
    written = [r for r in past["receipts"] if r["written"]]
    check(sum(r["paid"] for r in past["receipts"]) == past["paid"], "the receipts' sum")
    for receipt in written:
        name = f"{receipt['date']}-{receipt['shop'].lower().replace(' ', '-')}.yaml"
        check(receipts().get(name) == receipt["paid"], f"{name} is {receipt['paid']}")
    dates = {(r["date"], r["shop"]) for r in written}
    for visit in out["visits"]:
        check(day(visit["date"]) >= day(as_of), f"a stop of {visit['date']} is planned on {as_of}")
        check((visit["date"], visit["shop"]) not in dates, f"{visit['shop']} is planned once more")
    for meal in out["meals"]:
        check(day(meal["date"]) >= day(as_of), f"a meal of {meal['date']} is planned on {as_of}")
    check(out["proven"], f"as of {as_of}: not proven")
    conserved(past)
    return out


def edit(path, old, new):
    text = pathlib.Path(path).read_text()
    check(text.count(old) == 1, f"{path} has not one '{old}'")
    pathlib.Path(path).write_text(text.replace(old, new))


# A finished month: all of it is done, and nothing is to be bought.
run("build", "plans/2027-02.yaml")
february = json.loads(pathlib.Path("out/2027-02/result.json").read_text())
check(february["paid"] == 0 and february["past"]["paid"] > 60000, "February is not done")
check(len(february["past"]["receipts"]) == 9, "February has not nine receipts")
# By the receipts and the first count alone, its last day is that of the second count.
pathlib.Path("plans/on-hand.yaml").rename("count")
run("build", "plans/2027-02.yaml", "--as-of", "2027-02-28")
alone = json.loads(pathlib.Path("out/2027-02/result.json").read_text())["past"]
pathlib.Path("count").rename("plans/on-hand.yaml")
foods = conserved(alone)
check(foods > 100, f"only {foods} foods come and go in February")
counted, reckoned = collections.Counter(), collections.Counter()
for lot in february["on_hand"]:
    counted[lot["food"]] += lot["amount"]
for one in alone["there"]:
    reckoned[one["food"]] += one["amount"]
off = [f for f in counted if abs(counted[f] - reckoned[f]) > max(30, counted[f] / 4)]
check(len(off) <= 3, f"the count is not near what the receipts come to: {off}")

# The month as it is planned.
run("build", plan)
whole = result()
planned = whole["paid"]

# The first trip, first as the list has it: nothing of the rest moves.
run("receipt", "1 mar", "--plan", plan, "--write")
run("receipt", "1 mar", "--plan", plan, "--write", fails=True)  # none is written over
first = build("2027-03-01")
check(first["past"]["paid"] + first["paid"] == planned, "the sum with the receipts of the first day")
rest = [p for p in whole["purchases"] if whole["visits"][p["visit"]]["date"] > "2027-03-01"]
same = lambda list_of: sorted((p["food"], p["packs"], p["cost"]) for p in list_of)
check(same(first["purchases"]) == same(rest), "the rest of the list has moved")

# Three differences: another price, something missing, something else instead.
market = "plans/receipts/2027-03-01-fairfield-market.yaml"
edit(market, "- 12 oz egg noodles, 1.99\n", "- 1 lb fettuccine, 2.49, instead of egg noodles\n")
edit(market, "- 24 oz cornmeal, 2.69\n", "- 24 oz cornmeal, 2.89\n")
text = pathlib.Path(market).read_text()
text = re.sub(r"\n  - [^\n]*frozen peas[^\n]*", "", text) + "missing: [frozen peas]\n"
total = int(re.search(r"^total: (\d+)\.(\d\d)$", text, re.M)[0][7:].replace(".", ""))
total += (249 - 199) + (289 - 269) - 149
pathlib.Path(market).write_text(re.sub(r"^total: .*$", f"total: {total // 100}.{total % 100:02}", text,
                                       flags=re.M))
prices = pathlib.Path("plans/stores/fairfield-market.yaml")
before = prices.read_text()
said = run("settle", market)
for what in ("on the list, not bought", "instead of egg noodles", "0.20 dearer"):
    check(what in said, f"settle does not say '{what}'")
check(prices.read_text() == before, "settle changed a file without --write")
run("settle", market, "--write")
changed = [(a, b) for a, b in zip(before.splitlines(), prices.read_text().splitlines()) if a != b]
check(len(changed) == 1 and "2.69" in changed[0][0] and "2.89" in changed[0][1] and
      "2.69 until 2027-03-01" in changed[0][1], f"settle wrote {changed}")
second = build("2027-03-02")
check(any(p["food"] == "frozen pea" for p in second["purchases"]) or
      not any(u["food"] == "frozen pea" and u["date"] > "2027-03-06" for u in second["uses"]),
      "the missing peas are not bought later")

# A dinner to come is changed; what was bought stays as it was.
paid = second["past"]["paid"]
edit(plan, "dinner: [chickpea-curry, steamed-rice]", "dinner: [smoky-lentil-soup, cornbread]")
edit(plan, "    lunch: leftovers of chickpea-curry\n", "    lunch: leftovers of smoky-lentil-soup\n")
third = build("2027-03-02")
check(third["past"]["paid"] == paid, "a change of a dinner moved what was paid")
check([r for r in third["past"]["receipts"]] == [r for r in second["past"]["receipts"]],
      "a change of a dinner moved a receipt")

# The second trip as the list has it, a supper out, a count: from the 10th on.
run("receipt", "6 mar", "--plan", plan, "--write")
pathlib.Path(plan).write_text(pathlib.Path(plan).read_text() +
                              "\nas of: 2027-03-10\nchanges:\n  2027-03-05: {dinner: out, thrown away: 2 apples}\n")
tenth = build("2027-03-10")
check(any(m["what"] == "thrown away" and m["food"] == "apple" for m in tenth["past"]["moves"]),
      "what was thrown away is not told")
run("on-hand", "--date", "2027-03-10", "--plan", plan, "--write")
counted = build("2027-03-10")
spent = lambda out: out["paid"]
check(spent(counted) == spent(tenth), f"a count moves the list: {spent(tenth)} -> {spent(counted)}")

# On to the end, each trip as the list has it then.
for trip, then in (("2027-03-13", "2027-03-14"), ("2027-03-20", "2027-03-21"),
                   ("2027-03-27", "2027-03-28")):
    run("receipt", trip, "--plan", plan, "--write")
    build(then)
last = build("2027-03-31")
check(last["paid"] == 0, f"{last['paid']} is still to be paid on the last day")
check(last["past"]["paid"] == sum(receipts().values()), "what was paid in all")

# The next month begins with what is there.
run("on-hand", "--date", "2027-03-31", "--plan", plan, "--write")
pathlib.Path("plans/2027-04.yaml").write_text(
    "from: 2027-04-01\nuntil: 2027-04-10\nmeals:\n  2027-04-01: {dinner: smoky-lentil-soup}\n"
    "  2027-04-03: {dinner: [lemon-garlic-chicken, steamed-rice]}\n"
    "trips: [{date: 2027-04-01, stops: [fairfield-market, greenrow-produce]}]\n")
run("build", "plans/2027-04.yaml")
april = json.loads(pathlib.Path("out/2027-04/result.json").read_text())
check(len(april["on_hand"]) > 60, f"April begins with {len(april['on_hand'])} things")
check(not any(p["food"] == "jasmine rice" for p in april["purchases"]), "April buys rice that is there")

for failure in failures:
    print("wrong:", failure)
print(f"{steps} commands of a month: planned {planned / 100:.2f}, paid "
      f"{sum(receipts().values()) / 100:.2f}; {len(failures)} wrong")
sys.exit(1 if failures else 0)

"""Checks a result.json by itself: its schema, its sums, and that every use is met in time by food
that is still good. With the plan, that it says who eats what as the house's files do. Shares no code
with the compiler. Usage: check_result.py FOLDER SCHEMA [PLAN]"""
import collections
import csv
import datetime
import json
import math
import pathlib
import sys

import jsonschema

folder, schema = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2])
result = json.loads((folder / "result.json").read_text())
jsonschema.Draft202012Validator(json.loads(schema.read_text())).validate(result)

# By how much less than their share eaters are content, unless a household says otherwise.
GIVE = 0.1

failures = []


def check(good, what):
    if not good:
        failures.append(what)


def close(a, b):
    # Amounts are written to six places; a sum of some hundreds of them is off by less than this.
    return abs(a - b) <= 1e-3 + 1e-9 * abs(b)


def day(text):
    return datetime.date.fromisoformat(text)


visits, purchases, uses = result["visits"], result["purchases"], result["uses"]
keeping = {f["food"]: f for f in result["foods"]}

# Who eats what, as the house's own files say it; and that what all people eat is what was cooked.
if len(sys.argv) > 3:
    import eaters

    for wrong in eaters.compare(sys.argv[3], result):
        check(False, wrong)
    # A household may say what a dish can do without.
    said = eaters.load(pathlib.Path(sys.argv[3]).resolve().parent / "household.yaml").get("give")
    GIVE = float(said.split("%")[0]) / 100 if said else GIVE
    by_uses, by_people = eaters.energy_of(sys.argv[3], result)
    # Whites and yolks, juice, and cans that are poured off have other figures than their food.
    check(abs(by_uses / by_people - 1) < 0.03, f"energy: {by_uses:.0f} kcal by food, {by_people:.0f} by people")
for meal in result["meals"]:
    for dish in meal["dishes"]:
        parts = sum(one["portion"] for one in dish["eaters"])
        check(not dish["eaters"] or dish["kind"] == "plain" or close(parts, dish["servings"]), f"{meal['date']} {dish['name']}: portions make {parts}, it is for {dish['servings']}")

# Money: lines make up stops, stops make up the whole, to the cent.
goods = collections.Counter()
for p in purchases:
    goods[p["visit"]] += p["cost"] or 0
    check(close(p["amount"], p["packs"] * p["pack_amount"]), f"{p['food']}: packs and amount")
    check(0 <= p["freeze"] <= p["amount"] + 2e-3 * p["packs"], f"{p['food']}: more frozen than bought")
for i, v in enumerate(visits):
    check(goods[i] == v["goods"], f"stop {i}: its lines make {goods[i]}, it says {v['goods']}")
    check(v["paid"] == v["goods"] + v["tax"] - v["off"] - v["credit"], f"stop {i}: what is paid")
check(sum(v["paid"] for v in visits) == result["paid"], "all stops together")
check(sum(v["cash_back"] for v in visits) == result["cash_back"], "cash back")

# The list as a table says the same.
point = result["currency"]["point"]
with open(folder / "list.csv", newline="") as f:
    rows = list(csv.DictReader(f, delimiter=";" if point == "," else ","))
bought = [r for r in rows if r["row"] == "buy"]
check(len(bought) == len(purchases), "lines of list.csv")
check(sum(round(float((r["cost"] or "0").replace(point, ".")) * 100) for r in bought) == sum(p["cost"] or 0 for p in purchases), "sum of list.csv")
check({r["food"].removeprefix("'") for r in rows if r["row"] == "find"} == {s["food"] for s in result["still_to_find"]}, "list.csv: what is still to be found")

# What a making leaves over is taken once.
for one in result["by_products"]:
    check(close(one["amount"], one["left"] + sum(p["amount"] for p in one["for"])), f"{one['name']}: not all of it, or more, is accounted for")
    check(one["left"] >= -1e-6 and all(p["amount"] > 0 and p["covers"] > 0 for p in one["for"]), f"{one['name']}: less than nothing")

# Every use is met exactly, by stock and by purchases.
met = collections.Counter()
for s in result["from_stock"]:
    lot, use = result["on_hand"][s["lot"]], uses[s["use"]]
    met[s["use"]] += s["covers"]
    check(keeping[lot["food"]]["stands_for"] == keeping[use["food"]]["stands_for"], "stock of another food")
    check(lot["use_by"] is None or s["frozen"] or day(use["date"]) <= day(lot["use_by"]) + datetime.timedelta(use["slack"]), f"{lot['food']}: stock used after its date")
    check(lot["place"] != "freezer" or not use["fresh"], f"{lot['food']}: frozen stock for a fresh use")
taken = collections.Counter()
frozen = collections.Counter()
for s in result["supplies"]:
    p, use = purchases[s["purchase"]], uses[s["use"]]
    bought, used = day(visits[p["visit"]]["date"]), day(use["date"])
    # Some time in its week, from the day on which it comes home.
    used = max(bought, used - datetime.timedelta(use["slack"]))
    age = (used - bought).days
    keeps = keeping[p["food"]]
    met[s["use"]] += s["covers"]
    taken[s["purchase"]] += s["amount"]
    check(keeping[p["food"]]["stands_for"] == keeping[use["food"]]["stands_for"], "a purchase of another food")
    home = visits[p["visit"]]["home"]
    check(age > 0 or age == 0 and home <= use["clock"], f"{p['food']}: used {use['date']} at {use['clock']}, home {bought} at {home}")
    if s["frozen"]:
        # A pack that is opened later is portioned on that day.
        frozen[s["purchase"]] += s["amount"] if day(s["frozen_on"]) == bought else 0
        check(not use["fresh"], f"{p['food']}: frozen for a fresh use")
        check(age <= keeps["keeps_frozen_days"], f"{p['food']}: frozen too long")
        check(bought <= day(s["frozen_on"]) <= used, f"{p['food']}: frozen before it came home")
    elif s["opened_on"] is not None:
        opened = day(s["opened_on"])
        check(bought <= opened <= used, f"{p['food']}: opened before it came home")
        check((used - opened).days <= keeps["keeps_opened_days"], f"{p['food']}: open too long")
        check(age <= keeps["keeps_days"], f"{p['food']}: {age} days old, keeps {keeps['keeps_days']}")
    else:
        check(age <= keeps["keeps_days"], f"{p['food']}: {age} days old, keeps {keeps['keeps_days']}")
for s in result["still_to_find"] + result["short_but_enough"]:
    met[s["use"]] += s["amount"]
for s in result["short_but_enough"]:
    use = uses[s["use"]]
    check(s["amount"] <= use["give"] + 2e-3, f"{use['food']} on {use['date']}: {s['amount']} less, and it gives {use['give']}")
for i, use in enumerate(uses):
    check(close(met[i], use["amount"]), f"{use['food']} on {use['date']}: {met[i]} of {use['amount']}")
for i, p in enumerate(purchases):
    # What the scale rounds up to its next step is eaten with the rest.
    rest = p["amount"] - taken[i] - p["kept"] - p["wasted"]
    check(close(rest, 0) or -2e-3 * p["packs"] < rest < (p["pack_amount"] if p["by_weight"] else 1e-3), f"{p['food']}: used, kept and wasted do not make what is bought")
    check(frozen[i] <= p["freeze"] + 1e-3, f"{p['food']}: more comes from the freezer than was frozen")
stock_used = collections.Counter()
for s in result["from_stock"]:
    stock_used[s["lot"]] += s["amount"]
for i, lot in enumerate(result["on_hand"]):
    gone = stock_used[i] + lot["kept"] + lot["wasted"]
    check(abs(gone - lot["amount"]) < 1e-2 or gone == 0 and (lot["food"] not in keeping or lot["use_by"] is not None and lot["use_by"] < result["from"]),
          f"{lot['food']}: {gone} of {lot['amount']} on hand used, kept and wasted")

# What the list minimises: its terms make up the total, and agree with the tills.
account = result["account"]
less = {"cash_back", "reductions", "credit", "kept"}
total = sum(-v if k in less else v for k, v in account.items() if k != "total")
# The total counts half a cent less towards a reduction or a credit for each line that is weighed and each that is taxed.
unsure = 0.01 * len(purchases) if account["reductions"] or account["credit"] else 0
check(abs(total - account["total"]) < 0.01 + unsure, f"the terms make {total}, the total is {account['total']}")
# Of the prices only what the scale's rounding to the cent adds may differ.
weighed = sum(1 for p in purchases if p["by_weight"])
check(abs(account["prices"] - sum(goods.values()) / 100) <= 0.005 * weighed + 1e-6, "prices of the account")
check(abs(account["credit"] * 100 - sum(v["credit"] for v in visits)) < 1.5, "credit of the account")
check(close(account["stops"] * 100, result["stop_costs"]), "stops of the account")

# Makings: what is made is what is eaten, in time and while it keeps.
for i, m in enumerate(result["makings"]):
    eaten = sum(c["times"] for c in m["for"])
    check(close(eaten, min(m["times"], m["needed"])), f"{m['recipe']}: shares")
    check(m["times"] >= m["needed"] * (1 - GIVE) - 1e-6, f"{m['recipe']}: {m['times']} made, {m['needed']} needed")
    for c in m["for"]:
        age = (day(c["date"]) - day(m["date"])).days
        limit = m["keeps_freezer_days"] if c["frozen"] else m["keeps_unfrozen_days"]
        check(0 <= age <= (limit or 0), f"{m['recipe']}: used {age} days after it is made")
# A dish is as old as its oldest part, from neither freezer nor pantry (FDA Food Code 2022, 3-501.17).
made = result["makings"]
parts = collections.defaultdict(list)
for i, m in enumerate(made):
    for c in m["for"]:
        if "making" in c and not c["frozen"] and not m["keeps_in_pantry"]:
            parts[c["making"]].append((i, c["date"] > m["date"]))
left_over = collections.defaultdict(list)  # of other dishes, by what it goes into
for one in result["by_products"]:
    for part in one["for"]:
        if not part["frozen"] and not one["keeps_in_pantry"]:
            left_over[part["making"]].append((one["making"], day(one["good_until"])))


def oldest(i):
    return min([day(made[i]["date"])] + [oldest(p) for p, _ in parts[i] + left_over[i]])


def good(i):
    own = made[i]["keeps_unfrozen_days"]
    if own is None:
        return None
    # What is made on the same day gives no date of its own, but that of what is older in it.
    older = [good(p) for p, later in parts[i] if later or oldest(p) < day(made[p]["date"])]
    return min([oldest(i) + datetime.timedelta(days=own)] + [g for g in older if g is not None] + [g for _, g in left_over[i]])


for i, m in enumerate(made):
    check((m["good_until"] and day(m["good_until"])) == good(i), f"{m['recipe']} of {m['date']} is good until {m['good_until']}, by its parts {good(i)}")
    for c in m["for"]:
        if not c["frozen"] and c["date"] > m["date"]:
            check(day(c["date"]) <= good(i), f"{m['recipe']} of {m['date']} is eaten on {c['date']}, after {good(i)}")
served = collections.Counter()
off = collections.Counter()  # what six places of `times` leave open
for m in result["makings"]:
    for c in m["for"]:
        if "meal" in c:
            served[c["meal"], c["dish"]] += c["times"] * m["serves"]
            off[c["meal"], c["dish"]] += 1e-6 * m["serves"]
for i, meal in enumerate(result["meals"]):
    for d, dish in enumerate(meal["dishes"]):
        if dish["kind"] != "plain":
            least = (1 - GIVE) * dish["servings"]
            fed = least - off[i, d] - 1e-3 <= served[i, d] <= dish["servings"] + off[i, d] + 1e-3
            check(fed, f"{meal['date']} {dish['name']}: {served[i, d]} servings")
for use in uses:
    if "making" in use:
        check(day(use["date"]) <= day(result["makings"][use["making"]]["date"]), "food for a making comes after it")

# Money by meal: all shares make up the goods.
check(0 <= sum(d["cost"] for meal in result["meals"] for d in meal["dishes"]) <= sum(goods.values()) + 1, "cost of meals")

# The same with what was in the house: what is bought at its price, a lot on hand at what it would cost again. Each
# use's share of that goes down the makings to the dishes that it ends up in.
dish_worth, use_worth = collections.Counter(), collections.Counter()
lacks = collections.defaultdict(set)
shares = []
for i, m in enumerate(made):
    of = collections.Counter()
    for c in m["for"]:
        # What needs a making stands before it.
        for dish, share in ({(c["meal"], c["dish"]): 1} if "meal" in c else shares[c["making"]]).items():
            of[dish] += share * c["times"] / m["times"]
    shares.append(of)
for s, source in [(s, purchases[s["purchase"]]) for s in result["supplies"]] + [(s, result["on_hand"][s["lot"]]) for s in result["from_stock"]]:
    use = uses[s["use"]]
    if "making" in use or "meal" in use:
        ends = shares[use["making"]] if "making" in use else {(use["meal"], use["dish"]): 1}
    else:
        ends = {}
    if source["worth"] is None:
        for dish in ends:
            lacks[dish].add(source["food"])
    else:
        value = source["worth"] * s["amount"] / source["amount"]
        use_worth["making" in use or "meal" in use] += value
        for dish, share in ends.items():
            dish_worth[dish] += value * share
for i, meal in enumerate(result["meals"]):
    for d, dish in enumerate(meal["dishes"]):
        # Shares are written to six places.
        check(abs(dish_worth[i, d] - dish["worth"]) < 0.05, f"{meal['date']} {dish['name']}: worth {dish['worth']}, its food {dish_worth[i, d]}")
        check(dish["worth"] >= dish["cost"] - 1e-3, f"{meal['date']} {dish['name']}: worth less than it costs")
        check(set(dish["worth_lacks"]) == lacks[i, d], f"{meal['date']} {dish['name']}: without a price are {lacks[i, d]}")
paid, worth = result["money"]["paid"], result["money"]["worth"]
for p in purchases:
    check(p["cost"] is None or p["cost"] == p["worth"], f"{p['food']}: worth another sum than it costs")
check(close(sum(paid.values()), sum(goods.values())), "what is paid, by what it is for")
check(close(sum(d["cost"] for meal in result["meals"] for d in meal["dishes"]), paid["meals"]), "what is paid for meals")
check(abs(worth["meals"] + worth["left_over"] - use_worth[True]) < 0.5, "worth of meals and of what is cooked besides")
check(abs(worth["staples"] + worth["extra"] - use_worth[False]) < 0.5, "worth of staples and extras")
check(abs(sum(worth.values()) - sum(x["worth"] or 0 for x in purchases + result["on_hand"])) < 0.5, f"all worth {sum(worth.values())}, bought and in the house {sum(x['worth'] or 0 for x in purchases + result['on_hand'])}")

# Sessions: nothing before what it waits for, everything done by somebody.
for session in result["sessions"]:
    tasks = session["tasks"]
    for t in tasks:
        for before in t["after"]:
            b = tasks[before]
            check(b["start"] + b["hands_on"] + b["then"] <= t["start"], f"{t['what']} starts before {b['what']} has ended")
        check(t["hands_on"] == 0 or t["cook"] is not None, f"{t['what']}: nobody does it")
        check(t["start"] + t["hands_on"] + t["then"] <= session["length"], f"{t['what']} ends after the session")
    check(math.isfinite(session["length"]) and session["bound"] <= session["length"], "bound of a session")

# A dish of the day is ready for its meal. Every minute of the days is for check_clock.py.
for cook in result["cooking"]:
    check(cook["done"] <= cook["ready"], f"{made[cook['making']]['recipe']} of {cook['date']} is done at {cook['done']}, wanted at {cook['ready']}")

for failure in failures[:40]:
    print(failure)
print(f"{len(purchases)} purchases, {len(uses)} uses, {len(result['makings'])} makings checked; {len(failures)} wrong")
sys.exit(1 if failures else 0)

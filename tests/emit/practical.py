"""Counts in the outputs of a build what nobody would carry out.

usage: practical.py FOLDER
"""
import collections
import csv
import datetime
import fractions
import json
import pathlib
import re
import sys

folder = pathlib.Path(sys.argv[1])
result = json.loads((folder / "result.json").read_text())
uses, purchases, makings = result["uses"], result["purchases"], result["makings"]
foods = {food["food"]: food for food in result["foods"]}
days = (datetime.date.fromisoformat(result["until"]) - datetime.date.fromisoformat(result["from"])).days + 1
with open(folder / "list.csv", newline="") as f:
    department = {row["food"].removeprefix("'"): row["department"] for row in csv.DictReader(f)}
texts = [(path.name, line) for path in sorted(folder.iterdir()) if path.suffix in (".md", ".txt", ".html", ".ics")
         for line in path.read_text().splitlines()]
found = collections.defaultdict(list)

# Text.
for name, line in texts:
    if re.search(r"\d\.\d+ (servings?|times|portions?)\b|\bfor \d\.\d", line):
        found["decimals of servings"].append(f"{name}: {line}")
    cut = re.search(r"\b(Chop|Dice|Mince|Slice|Shred|Grate|Cube|Tear|Cut into \w+) (\d+\.\d+) (?!oz|lb|g |kg|fl oz)", line)
    if cut:
        found["parts of a piece that nobody cuts"].append(f"{name}: {line}")

# Makings: in quarters or thirds, or so that something counted comes out whole.
for i, making in enumerate(makings):
    times = fractions.Fraction(making["times"]).limit_denominator(120)
    counts = [int(m[1]) for u in uses if u.get("making") == i and (m := re.match(r"(\d+) [a-z]", u["line"]))]
    if times.denominator not in (1, 2, 3, 4) and not any((times * n * 4).denominator == 1 for n in counts):
        found["makings in parts that nobody measures"].append(f"{making['recipe']}: {times}")

# Bags.
for supply in result["supplies"]:
    food = purchases[supply["purchase"]]["food"]
    small = supply["amount"] < 60 and foods[food]["basis"] == "g" and department[food] != "spices"
    if supply["frozen"] and small and supply["covers"] < 0.999 * (uses[supply["use"]]["amount"] - uses[supply["use"]]["give"]):
        found["bags of less than 60 g"].append(f"{food}: {supply['amount']} g")

# Lines.
used = collections.Counter()
for supply in result["supplies"]:
    used[supply["purchase"]] += supply["amount"]
for i, line in enumerate(purchases):
    keeps = foods[line["food"]]["keeps_days"]
    least = line["by_weight"] and line["packs"] == 1  # a counter sells no less
    if used[i] < 0.1 * line["amount"] and not least and keeps is not None and keeps <= days:
        found["lines of which less than a tenth is used"].append(f"{line['food']}, {line['pack']}")

# Pieces and cans. A line such as "2 carrots" says how many pieces a making of the recipe takes.
parts = collections.defaultdict(list)
for supply in result["supplies"]:
    parts[supply["use"]].append((supply["amount"], purchases[supply["purchase"]]["pack_amount"]))
for u, served in parts.items():
    use = uses[u]
    # A head is taken apart leaf by leaf, and what is left of one is used up first.
    whole = re.match(r"(\d+) (?!\d|oz|lb|g |kg|ml|l |cups?|tbsp|tsp|cloves?|cans?|pints?|quarts?|sprigs?|slices?|heads?)", use.get("line", ""))
    if whole and len(served) > 1:
        piece = use["amount"] / (int(whole[1]) * makings[use["making"]]["times"])
        if min(amount for amount, _ in served) < 0.2 * piece and piece > 15:
            found["pieces split between two lots"].append(f"{use['food']}: {served}, a piece is {piece:.0f} g")
    if use["containers"]:
        usual = use["amount"] / use["containers"]
        cans = sum(amount / pack for amount, pack in served if 0.75 * usual <= pack <= 1.25 * usual)
        if cans > use["containers"] * 1.001:
            found["more cans than were asked for"].append(f"{use['food']}: {cans}")

for what in ("decimals of servings", "makings in parts that nobody measures", "bags of less than 60 g",
             "parts of a piece that nobody cuts", "lines of which less than a tenth is used",
             "pieces split between two lots", "more cans than were asked for"):
    print(f"{len(found[what]):4} {what}")
    for one in found[what][:10]:
        print("       " + one)
sys.exit(any(found.values()))

"""Reads a list.csv as any program would and compares it row by row with the result.json beside it;
then its bytes with RFC 4180. Usage: check_csv.py FOLDER"""
import csv
import io
import json
import pathlib
import sys

folder = pathlib.Path(sys.argv[1])
result = json.loads((folder / "result.json").read_text())
raw = (folder / "list.csv").read_bytes()
failures = []


def check(good, what):
    if not good:
        failures.append(what)


point = result["currency"]["point"]
separator = ";" if point == "," else ","
rows = list(csv.reader(io.StringIO(raw.decode(), newline=""), strict=True, delimiter=separator))
head, rows = rows[0], rows[1:]
check(len({len(row) for row in [head, *rows]}) == 1, "rows of different lengths")
check(raw.endswith(b"\r\n") and raw.count(b"\r\n") == len(rows) + 1, "a line end that is not CRLF")

# Written again by the rules of RFC 4180, it is the same: quotes stand where they must and are doubled.
again = io.StringIO(newline="")
csv.writer(again, lineterminator="\r\n", delimiter=separator).writerows([head, *rows])
check(again.getvalue().encode() == raw, "quoted otherwise than RFC 4180 says")


def safe(text):
    return "'" + text if text.strip()[:1] in ("=", "+", "-", "@") and text.strip() else text


def amount(cell):
    return round(float(cell.replace(point, ".")) * 100) if cell else 0


kinds = {kind: [dict(zip(head, row)) for row in rows if row[0] == kind] for kind in ("buy", "find", "total")}
check(sum(len(some) for some in kinds.values()) == len(rows), "a row of another kind")
check([row[0] for row in rows] == ["buy"] * len(kinds["buy"]) + ["find"] * len(kinds["find"]) + ["total"] * len(kinds["total"]), "the order of the rows")

# What is still to be found has neither day nor shop.
missing = {safe(short["food"]) for short in result["still_to_find"]}
check(sorted(row["food"] for row in kinds["find"]) == sorted(missing), "what is still to be found")
check(not any(row["shop"] or row["cost"] for row in kinds["find"]), "a shop of what is still to be found")

check(len(kinds["buy"]) == len(result["purchases"]), "number of purchases")
for row, bought in zip(kinds["buy"], result["purchases"]):
    visit = result["visits"][bought["visit"]]
    check(row["date"] == visit["date"], f"{bought['food']}: date")
    check(row["shop"] == safe(visit["shop"]), f"{bought['food']}: shop")
    check(row["food"] == safe(bought["food"]), f"{bought['food']}: food")
    # A weight is no number of packs: 5.2 lb on a scale that shows tenths are 52 steps of it.
    if bought["by_weight"]:
        check(row["packs"] == "" and abs(float(row["weight"].replace(point, ".")) - bought["packs"] / bought["steps_per_price"]) < 0.001, f"{bought['food']}: weight")
    else:
        check(row["packs"] == str(bought["packs"]) and row["weight"] == "", f"{bought['food']}: packs")
    check(amount(row["cost"]) == bought["cost"], f"{bought['food']}: cost")
    # One by one it costs no less than what was paid, and no more where there is no deal.
    many = bought["packs"] / (bought["steps_per_price"] if bought["by_weight"] else 1)
    check(amount(row["unit price"]) * many >= bought["cost"] - 1, f"{bought['food']}: unit price")
    check((row["freeze"] != "") == (bought["freeze"] > 0), f"{bought['food']}: freeze")
for row in kinds["buy"] + kinds["find"] + kinds["total"]:
    for name, cell in row.items():
        check(not cell or cell[0] not in "=+-@\t\r\n", f"{row['food']}: {name} would be run: {cell}")

# The sums: of each stop as result.json has them, and in the end of all.
stops, month = kinds["total"][:-1], kinds["total"][-1]
check(len(stops) == len(result["visits"]), "number of stops with a sum")
for row, visit in zip(stops, result["visits"]):
    said = [amount(row[name]) for name in ("cost", "tax", "reduction", "credit", "paid")]
    check(said == [visit[name] for name in ("goods", "tax", "off", "credit", "paid")], f"{visit['date']}: sums of {visit['shop']}")
    lines = [one for one in kinds["buy"] if (one["date"], one["shop"]) == (row["date"], row["shop"])]
    check(sum(amount(one["cost"]) for one in lines) == amount(row["cost"]), f"{visit['date']}: goods of {visit['shop']}")
    check(sum(amount(one["tax"]) for one in lines) == amount(row["tax"]), f"{visit['date']}: tax of {visit['shop']}")
check(amount(month["paid"]) == result["paid"], "the sum of the month")

for failure in failures:
    print(failure)
print(f"{len(rows)} rows, {len(failures)} failures")
sys.exit(bool(failures))

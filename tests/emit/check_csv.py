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


rows = list(csv.reader(io.StringIO(raw.decode(), newline=""), strict=True))
head, rows = rows[0], rows[1:]
check(len({len(row) for row in [head, *rows]}) == 1, "rows of different lengths")
check(raw.endswith(b"\r\n") and raw.count(b"\r\n") == len(rows) + 1, "a line end that is not CRLF")

# Written again by the rules of RFC 4180, it is the same: quotes stand where they must and are doubled.
again = io.StringIO(newline="")
csv.writer(again, lineterminator="\r\n").writerows([head, *rows])
check(again.getvalue().encode() == raw, "quoted otherwise than RFC 4180 says")


def safe(text):
    return "'" + text if text.strip()[:1] in ("=", "+", "-", "@") and text.strip() else text


# What is still to be found stands below, with neither day nor shop.
count = len(result["purchases"])
missing = {safe(short["food"]) for short in result["still_to_find"]}
check(sorted(row[head.index("food")] for row in rows[count:]) == sorted(missing), "what is still to be found")
check(not any(row[head.index("shop")] or row[head.index("cost")] for row in rows[count:]), "a shop of what is still to be found")
for cells, bought in zip(rows, result["purchases"]):
    row = dict(zip(head, cells))
    visit = result["visits"][bought["visit"]]
    check(row["date"] == visit["date"], f"{bought['food']}: date")
    check(row["shop"] == safe(visit["shop"]), f"{bought['food']}: shop")
    check(row["food"] == safe(bought["food"]), f"{bought['food']}: food")
    check(row["packs"] == str(bought["packs"]), f"{bought['food']}: packs")
    check(row["cost"] == f"{bought['cost'] // 100}.{bought['cost'] % 100:02}", f"{bought['food']}: cost")
    check((row["freeze"] != "") == (bought["freeze"] > 0), f"{bought['food']}: freeze")
    for name, cell in row.items():
        check(not cell or cell[0] not in "=+-@\t\r\n", f"{bought['food']}: {name} would be run: {cell}")

for failure in failures:
    print(failure)
print(f"{len(rows)} rows, {len(failures)} failures")
sys.exit(bool(failures))

"""Ways to spoil a YAML file: its text, or what it says. All are drawn from a random.Random.

A change takes (dice, text, other texts of the house) and gives a new text, or None where it does not
apply. Texts are bytes, since some changes leave no valid UTF-8.
"""
import datetime
import re

import yaml

UNITS = ("g", "kg", "lb", "oz", "ml", "l", "gal", "qt", "cup", "cups", "tbsp", "tsp", "fl oz", "pint", "each", "bunch",
         "can", "dozen", "clove", "days", "months", "min", "h", "%", "F")
NUMBERS = ("0", "-1", "1", "2", "0.5", "1/3", "1 1/2", "1/0", "0.0000001", "1e9", "99", "1000", "1000000", "9999999.99",
           "57646.08", "922337.21", "10000000", "99999999999999999999", "1" + "0" * 60, "3.14159265358979", "NaN", "inf",
           "½", "1½-2", "0x10", "1_000", "1,5", "٣")
DATES = ("2027-03-01", "2027-03-31", "2027-02-29", "2028-02-29", "2027-13-01", "2027-3-1", "0000-00-00", "0001-01-01",
         "9999-12-31", "2026-12-31", "2027-04-15", "1970-01-01", "20270301", "every Friday", "every day", "2027-03-01T10:00")
WORDS = ("", " ", "null", "~", "yes", "no", "true", "out", "none", "[]", "{}", "[[]]", "*a", "&a x", "!!int 3", "<<", "?",
         "- x", "a: b", "'", '"', "#", "|", ">", "%YAML 1.1", "---", "...", "../../etc", "=1+1", "<b>x</b>", "x" * 5000,
         "100000 eggs", "leftovers of", "per week", "keep", "for", "and", "juice of 1 lb", "(", ")", "2 (15 oz) cans",
         "$5.00", "2 for 5.00", "0 for 0.00", "1.99/lb", "0 lb bag 1.00", "1 lb bag 0.00", "25:61", "24:00", "00:00",
         "-5 %", "101 %", "0 %", "1000 %")
ODD = ("\ufeff", "\u202e", "\u200b", "\u2028", "\x00", "\x07", "\x1b[31m", "\x85", "\u0301" * 40, "🥕", "é", "ß", "İ", "\ud7ff",
       "\t", "\r", "\r\n", "\xa0", "，", "：", "“", "﷽")
BROKEN = (b"\xff", b"\xc0\xaf", b"\xed\xa0\x80", b"\xf4\x90\x80\x80", b"\xe2\x82", b"\x80")
NUMBER = re.compile(rb"\d+(?:\.\d+)?")
DATE = re.compile(rb"\d{4}-\d{2}-\d{2}")
UNIT = re.compile(rb"(?<=[\d ])(?:g|kg|lb|oz|ml|l|gal|cups?|tbsp|tsp|each|bunch|can|days|min)\b")


def replace_one(dice, text, pattern, words):
    found = list(pattern.finditer(text))
    if not found:
        return None
    one = dice.choice(found)
    return text[:one.start()] + dice.choice(words).encode() + text[one.end():]


def number(dice, text, _):
    return replace_one(dice, text, NUMBER, NUMBERS)


def near_number(dice, text, _):
    """Another number that a cook might write."""
    found = list(NUMBER.finditer(text))
    if not found:
        return None
    one = dice.choice(found)
    value = float(one[0])
    near = dice.choice((value + 1, max(0, value - 1), value * 2, value / 2, value * 10, value * 100, value / 10, value * 1000))
    return text[:one.start()] + f"{near:.2f}".rstrip("0").rstrip(".").encode() + text[one.end():]


def near_date(dice, text, _):
    found = list(DATE.finditer(text))
    try:
        one = dice.choice(found)
        day = datetime.date.fromisoformat(one[0].decode()) + datetime.timedelta(dice.choice((-30, -7, -2, -1, 1, 2, 5, 14)))
    except (IndexError, ValueError, OverflowError):
        return None
    return text[:one.start()] + day.isoformat().encode() + text[one.end():]


def fewer(dice, text, _):
    """Something between commas of a list is left out, or said twice, or a whole line is."""
    found = list(re.finditer(rb"(?<=[\[{,])[^\[\]{},\n]+,|\n *- [^\n]*|\n +[\w ]+: [^\n]*", text))
    if not found:
        return None
    one = dice.choice(found)
    return text[:one.start()] + dice.choice((b"", b"", one[0] * 2)) + text[one.end():]


def date(dice, text, _):
    return replace_one(dice, text, DATE, DATES)


def unit(dice, text, _):
    return replace_one(dice, text, UNIT, UNITS)


def odd(dice, text, _):
    at = dice.randrange(len(text) + 1)
    what = dice.choice(BROKEN) if dice.random() < 0.3 else dice.choice(ODD).encode("utf-8", "surrogatepass")
    return text[:at] + what + text[at:]


def word(dice, text, _):
    return replace_one(dice, text, re.compile(rb"[\w.%/-]+"), WORDS)


def lines(dice, text, others):
    """Lines are left out, doubled, exchanged, indented, taken from another file."""
    rows = text.split(b"\n")
    i, j = dice.randrange(len(rows)), dice.randrange(len(rows))
    way = dice.randrange(7)
    if way == 0:
        del rows[i]
    elif way == 1:
        rows.insert(j, rows[i])
    elif way == 2:
        rows[i], rows[j] = rows[j], rows[i]
    elif way == 3:
        rows[i] = b" " * dice.choice((1, 2, 3, 8)) + rows[i]
    elif way == 4:
        rows[i] = rows[i].lstrip()
    elif way == 5:
        rows.insert(i, dice.choice(dice.choice(others).split(b"\n")))
    else:
        rows[i:i + 1] = [rows[i]] * dice.choice((3, 50, 2000))
    return b"\n".join(rows)


def piece(dice, text, others):
    """A stretch is left out, doubled, or cut off; or the file is another's, or nothing."""
    a, b = sorted(dice.randrange(len(text) + 1) for _ in range(2))
    b = min(b, a + 200)
    return dice.choice((text[:a] + text[b:], text[:b] + text[a:], text[:a], dice.choice(others), b""))


# What the file says


class Plain(yaml.SafeDumper):
    """Writes what is there twice twice, without anchors."""

    def ignore_aliases(self, _):
        return True


def nodes(tree, path=()):
    out = [path]
    inner = tree.items() if isinstance(tree, dict) else enumerate(tree) if isinstance(tree, list) else ()
    for key, value in inner:
        out += nodes(value, path + (key,))
    return out


def at(tree, path):
    for key in path:
        tree = tree[key]
    return tree


def scalar(dice):
    return dice.choice(dice.choice((NUMBERS, DATES, WORDS, UNITS, tuple(word for word in ODD))))


def structure(dice, text, others):
    """A part of the tree is left out, doubled, wrapped, renamed, or replaced by another part or a scalar."""
    try:
        tree, donor = (yaml.load(one, Loader=yaml.BaseLoader) for one in (text, dice.choice(others)))
    except (yaml.YAMLError, UnicodeError, ValueError, RecursionError):
        return None
    paths = [path for path in nodes(tree) if path]
    if not paths:
        return None
    path = dice.choice(paths)
    holder, key = at(tree, path[:-1]), path[-1]
    way = dice.randrange(8)
    if way == 0:
        del holder[key]
    elif way == 1 and isinstance(holder, list):
        holder[key:key] = [holder[key]] * dice.choice((1, 1, 20, 500))
    elif way == 2:
        holder[key] = [holder[key]]
    elif way == 3:
        holder[key] = {scalar(dice): holder[key]}
    elif way == 4 and isinstance(holder, dict):
        holder[scalar(dice)] = holder.pop(key)
    elif way == 5:
        holder[key] = at(donor, dice.choice(nodes(donor)))
    elif way == 6:
        deep = holder[key]
        for _ in range(dice.choice((2, 30, 300))):
            deep = [deep]
        holder[key] = deep
    else:
        holder[key] = scalar(dice)
    try:
        return yaml.dump(tree, Dumper=Plain, sort_keys=False, allow_unicode=True, default_flow_style=None).encode(
            "utf-8", "surrogatepass")
    except (yaml.YAMLError, RecursionError, UnicodeError):
        return None


GENTLE = (near_number, near_number, near_number, near_date, fewer, fewer)
HARSH = (number, number, number, date, unit, odd, word, word, lines, lines, piece, structure, structure, structure)


def changed(dice, text, others):
    """The text with one change; two thirds of them leave it a house that could be one."""
    for _ in range(20):
        new = dice.choice(GENTLE if dice.random() < 0.67 else HARSH)(dice, text, others)
        if new is not None and new != text:
            return new
    return text + b"\n"

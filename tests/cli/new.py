"""`manciple new` makes a house that builds at once, all of it or nothing, and touches nothing that is
there.

usage: new.py PROGRAM
"""
import json
import os
import pathlib
import stat
import subprocess
import sys
import tempfile

import jsonschema
import yaml

program = str(pathlib.Path(sys.argv[1]).resolve())


def run(*words, **more):
    return subprocess.run([program, *words], capture_output=True, text=True, **more)


def kind_of(file):
    if file.parent.name == "recipes":
        return "recipe"
    if file.parent.name == "stores":
        return "shop"
    return file.stem if file.stem in ("household", "on-hand") else "plan"


def builds_at_once(place, system):
    house = place / f"a house, {system}"
    made = run("new", str(house), "--measures", system, "--from", "2028-02-27")
    assert made.returncode == 0, made.stderr
    assert str(house / "plans/week.yaml") in made.stdout, made.stdout
    files = sorted(house.rglob("*.yaml"))
    assert len(files) >= 7, files
    for file in files:
        text = file.read_text()
        assert "DAY" not in text, file
        assert text.startswith("#") or file.parent.name == "recipes", f"{file} does not say what it is"
        schema = json.loads(run("schema", kind_of(file)).stdout)
        jsonschema.Draft202012Validator(schema).validate(yaml.load(text, yaml.BaseLoader))
    assert "2028-03-01" in (house / "plans/week.yaml").read_text() # after a leap day
    built = run("build", str(house / "plans/week.yaml"))
    assert built.returncode == 0 and built.stderr == "", built.stderr
    said = (house / "out/week/list.txt").read_text()
    assert "Still to find" not in said and "proven" in said, said
    assert said.count("no price known") == 1, said # the question mark of the shop's file
    assert (" kg" in said) == (system == "metric") and (" lb" in said) == (system == "us"), said
    checked = run("check", cwd=house)
    assert checked.returncode == 0 and checked.stderr == "", checked.stderr
    metric = system == "metric"
    known = run("food", "courgette", cwd=house).stdout
    assert known.startswith("courgette\n" if metric else "zucchini\n"), known
    assert ("g per 100 ml" in known) == metric and ("g per cup" in known) != metric, known
    pure = run("convert", "100 g tomato puree", "--to", "tbsp", cwd=house).stdout
    assert pure.startswith("6.02 metric tbsp" if metric else "6.4 tbsp"), pure # paste, or what is thin
    assert ("1 kg bag 2.99" in run("keys", "shop", cwd=house).stdout) == metric
    assert ("1 kg bag 2.99" in run("keys", "shop", "--measures", system).stdout) == metric
    again = place / f"again, {system}"
    run("new", str(again), "--measures", system, "--from", "2028-02-27")
    for file in files:
        assert file.read_bytes() == (again / file.relative_to(house)).read_bytes(), file
    assert stat.S_IMODE(again.stat().st_mode) == 0o755, oct(again.stat().st_mode)


def touches_nothing(place):
    for name, make in {
            "a file": lambda path: path.write_text("mine"),
            "an empty folder": lambda path: path.mkdir(),
            "a folder": lambda path: (path.mkdir(), (path / "mine").write_text("mine")),
            "a link": lambda path: path.symlink_to("nowhere"),
    }.items():
        path = place / name
        make(path)
        before = [(p, p.lstat().st_mtime_ns) for p in sorted(place.rglob("*"))]
        refused = run("new", str(path))
        assert refused.returncode == 1 and "already exists" in refused.stderr, refused
        assert before == [(p, p.lstat().st_mtime_ns) for p in sorted(place.rglob("*"))], name
    for words, said in [(["missing/house"], "there is no folder"),
                        ([""], ""), (["."], "already exists"),
                        (["x", "--measures", "roman"], "us"), (["x", "--from", "2027-02-30"], "is not a date")]:
        refused = run("new", *words, cwd=place)
        assert refused.returncode in (1, 2) and said in refused.stderr, (words, refused)
    assert not (place / "x").exists() and not list(place.glob(".manciple-*"))


os.umask(0o022)
with tempfile.TemporaryDirectory() as folder:
    for each in ("us", "metric"):
        builds_at_once(pathlib.Path(folder), each)
with tempfile.TemporaryDirectory() as folder:
    touches_nothing(pathlib.Path(folder))
print("two houses made and built, nothing touched that was there")

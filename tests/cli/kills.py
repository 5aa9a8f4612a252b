"""Builds of two versions of a house, one after another into one folder, each killed at a moment of
chance: the folder holds one version whole, and what the user put there. Then two builds at once.

usage: kills.py PROGRAM [KILLS]
"""
import pathlib
import random
import re
import signal
import subprocess
import sys
import tempfile
import time

program = str(pathlib.Path(sys.argv[1]).resolve())
kills = int(sys.argv[2]) if len(sys.argv) > 2 else 30
chance = random.Random(20270301)

house = {
    "plans/household.yaml": 'people: [{name: Ada}]\nmeals: {dinner: "18:30"}\n',
    "plans/stores/corner.yaml": "shop: Corner\nprices: {onion: 1.00/lb}\n",
    "recipes/stew.yaml": "name: Stew\nserves: 1\ningredients: [1 lb onion]\n",
}
for version, servings in (("a", 2), ("b", 3)):
    house[f"plans/{version}.yaml"] = (
        f"plan: P\nfrom: 2027-03-01\nuntil: 2027-03-31\ntrips: [{{every: Monday, stops: [corner]}}]\n"
        "meals:\n  every day: {dinner: stew for %d}\n" % servings)

with tempfile.TemporaryDirectory() as place:
    root = pathlib.Path(place)
    for name, text in house.items():
        (root / name).parent.mkdir(parents=True, exist_ok=True)
        (root / name).write_text(text)

    def start(version, out="out/p"):
        return subprocess.Popen([program, "build", f"plans/{version}.yaml", "--out", out], cwd=root,
                                stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)

    # The calendar counts its revisions on from the one that was there.
    def without_revisions(text):
        return re.sub(rb"(DTSTAMP|SEQUENCE):[^\r]*", b"", text)

    def content(folder):
        return {f.name: without_revisions(f.read_bytes()) for f in sorted(folder.iterdir()) if f.name != "mine"}

    versions = []
    began = time.monotonic()
    for version in "ab":
        assert start(version, f"whole/{version}").wait() == 0
        versions.append(content(root / "whole" / version))
    takes = (time.monotonic() - began) / 2
    assert versions[0] != versions[1]
    assert start("a").wait() == 0
    (root / "out/p/mine").mkdir()
    (root / "out/p/mine/notes.txt").write_text("mine")

    left = 0
    for kill in range(kills):
        build = start("ab"[kill % 2])
        time.sleep(chance.uniform(0.3, 1.1) * takes)
        build.send_signal(signal.SIGKILL)
        build.wait()
        left += len(list((root / "out").iterdir())) > 1
        assert content(root / "out/p") in versions, f"a mixture after kill {kill}"
        assert (root / "out/p/mine/notes.txt").read_text() == "mine"
    for _ in range(max(3, kills // 10)):
        builds = [start("a"), start("b"), start("a")]
        assert all(build.wait() == 0 for build in builds)
        assert content(root / "out/p") in versions, "a mixture of builds at once"
    assert [f.name for f in (root / "out").iterdir()] == ["p"], "something is left beside"
    assert (root / "out/p/mine/notes.txt").read_text() == "mine"
    print(f"{kills} kills, {left} of them in the middle of writing")

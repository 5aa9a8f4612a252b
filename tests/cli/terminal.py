"""A long build on a terminal shows how it stands, and Ctrl-C ends it with the best list so far, which
is said on what it writes; without a terminal nothing is shown.

usage: terminal.py PROGRAM
"""
import json
import os
import pathlib
import pty
import re
import select
import shutil
import signal
import subprocess
import sys
import tempfile
import time

program = str(pathlib.Path(sys.argv[1]).resolve())
source = pathlib.Path(__file__).parents[2]

with tempfile.TemporaryDirectory() as place:
    root = pathlib.Path(place)
    shutil.copytree(source / "plans", root / "plans")
    shutil.copytree(source / "recipes", root / "recipes")
    # So little room that a proof takes minutes.
    household = root / "plans/household.yaml"
    text = re.sub(r"(?m)^storage:.*$", "storage: {fridge: 60 l, freezer: 30 l, pantry: 400 l}",
                  household.read_text())
    household.write_text(text)
    build = [program, "build", "plans/2027-03.yaml", "--search", "1000", "--out", "out/p"]

    pid, terminal = pty.fork()
    if pid == 0:
        os.chdir(root)
        os.execv(program, build)
    seen = b""
    began = time.monotonic()
    asked = None
    while True:
        ready, _, _ = select.select([terminal], [], [], 0.5)
        if ready:
            try:
                data = os.read(terminal, 65536)
            except OSError:
                break
            if not data:
                break
            seen += data
        lines = seen.count(b"best list so far")
        if asked is None and lines >= 3:
            os.write(terminal, b"\x03")
            asked = time.monotonic()
        assert time.monotonic() - began < 120, seen[-500:]
    _, status = os.waitpid(pid, 0)
    assert os.waitstatus_to_exitcode(status) == 0, (status, seen[-800:])
    assert asked is not None, seen[-800:]
    took = time.monotonic() - asked
    assert took < 20, f"Ctrl-C took {took:.1f} s"
    # Not before a second, and not more than twice a second.
    shown = re.findall(rb"\r((?:looking|best list)[^\r\n]*)", seen)
    assert len(shown) <= 2 * (asked - began) + 1, (len(shown), asked - began)
    assert b"\x1b" not in seen
    said = "the search was stopped by hand before it"
    assert said.encode() in seen
    for name in ("list.txt", "list.md", "money.md", "month.html"):
        assert said in (root / "out/p" / name).read_text(), name
    result = json.loads((root / "out/p/result.json").read_text())
    assert result["stopped_by_hand"] and not result["proven"]

    # The same input without a terminal: nothing is shown in its first seconds, and Ctrl-C (SIGINT)
    # ends it as it ends any program, with nothing written.
    shutil.rmtree(root / "out")
    # What a shell runs in the background ignores SIGINT, and so would the program.
    quiet = subprocess.Popen(build, cwd=root, stdout=subprocess.PIPE, stderr=subprocess.PIPE,
                             preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_DFL))
    time.sleep(3)
    quiet.send_signal(2)
    out, error = quiet.communicate(timeout=10)
    assert quiet.returncode == -2 and not out and not error, (quiet.returncode, out, error[-300:])
    assert not (root / "out").exists()
    print(f"{len(shown)} lines in {asked - began:.1f} s, ended {took:.1f} s after Ctrl-C: "
          f"{shown[-1].decode()}")

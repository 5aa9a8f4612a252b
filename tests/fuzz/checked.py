"""Runs the program once in a house, with limits, and says what is wrong with how it behaved."""
import os
import pathlib
import re
import resource
import subprocess
import sys
import tempfile
import time

TESTS = pathlib.Path(__file__).resolve().parents[1]
RESULT = TESTS / "emit/check_result.py"
SCHEMA = TESTS.parent / "compiler/emit/result.schema.json"
sys.path.insert(0, str(TESTS / "oracle/house"))
import check  # noqa: E402
import month  # noqa: E402
from read import Reader  # noqa: E402
from result import Result, Unfit  # noqa: E402

PLACE = re.compile(r"^(\S[^:\n]*\.yaml):(\d+):(\d+): (?:error|warning): ", re.M)
ANSI_OR_CONTROL = re.compile(r"[\x00-\x08\x0b-\x1f\x7f\x80-\x9f]")


class Limits:
    def __init__(self, seconds=10, megabytes=1000):
        self.seconds, self.megabytes = seconds, megabytes


def limited(megabytes):
    def before():
        resource.setrlimit(resource.RLIMIT_AS, (2 * megabytes << 20, 2 * megabytes << 20))
        resource.setrlimit(resource.RLIMIT_FSIZE, (200 << 20, 200 << 20))
        resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
    return before


def tree(folder):
    """Every file with its bytes."""
    return {str(path.relative_to(folder)): path.read_bytes() for path in sorted(folder.rglob("*"))
            if path.is_file() and not path.is_symlink()}


def run(program, plan, folder, limits):
    """(exit code, minus a signal, or None for no end; output; seconds; megabytes)."""
    with tempfile.TemporaryFile() as said:
        start = time.monotonic()
        process = subprocess.Popen([program, "build", plan], cwd=folder, stdout=said, stderr=said,
                                   stdin=subprocess.DEVNULL, preexec_fn=limited(limits.megabytes))
        ended = False
        while True:
            pid, status, usage = os.wait4(process.pid, os.WNOHANG)
            if pid:
                break
            if not ended and time.monotonic() - start > limits.seconds:
                process.kill()
                ended = True
            time.sleep(0.003)
        process.returncode = os.waitstatus_to_exitcode(status)
        said.seek(0)
        code = None if ended else process.returncode
        return code, said.read(), time.monotonic() - start, usage.ru_maxrss / 1024


def places_wrong(folder, output):
    """Places that do not exist."""
    out = []
    for file, line, column in PLACE.findall(output):
        path = folder / file
        rows = path.read_bytes().decode("utf-8", "replace").split("\n") if path.exists() else []
        # One past the end is where something is missing.
        if not 1 <= int(line) <= len(rows) + 1 or (int(line) <= len(rows) and int(column) > len(rows[int(line) - 1].encode()) + 1):
            out.append(f"{file}:{line}:{column}")
    return out


def faults(program, plan, folder, limits):
    """(kind, detail) for everything that is wrong; the last element is how it ended."""
    folder = pathlib.Path(folder)
    before = tree(folder)
    code, raw, seconds, megabytes = run(program, plan, folder, limits)
    output = raw.decode("utf-8", "replace")
    after = tree(folder)
    found = []
    if code is None:
        return [("no end", f"more than {limits.seconds} s")], "no end"
    if code < 0:
        found.append((f"signal {-code}", output[-400:]))
    elif code not in (0, 1, 2):
        found.append((f"exit {code}", output[-400:]))
    if megabytes > limits.megabytes:
        found.append(("memory", f"{megabytes:.0f} MB"))
    if ANSI_OR_CONTROL.search(output):
        found.append(("control characters", repr(ANSI_OR_CONTROL.search(output)[0])))
    try:
        raw.decode()
    except UnicodeDecodeError as reason:
        found.append(("output is no UTF-8", str(reason)))
    for place in places_wrong(folder, output):
        found.append(("a place that does not exist", place))
    if code in (1, 2):
        if "error" not in output:
            found.append(("no error is said", output[-200:]))
        if after != before:
            found.append(("written on an error", ", ".join(sorted(set(after) ^ set(before)))[:200]))
    if code == 0:
        if any(before[name] != after.get(name) for name in before):
            found.append(("an input changed", ""))
        found += result_wrong(folder, plan, set(after) - set(before))
    return found, f"exit {code}"


def result_wrong(folder, plan, new):
    results = [name for name in new if name.endswith("/result.json")]
    if len(results) != 1:
        return [("no result", ", ".join(sorted(new))[:200])]
    out = pathlib.Path(results[0]).parent
    if any(pathlib.Path(name).parent != out for name in new):
        return [("written elsewhere", ", ".join(sorted(new))[:200])]
    ran = subprocess.run([sys.executable, "-B", str(RESULT), str(folder / out), str(SCHEMA)], capture_output=True, text=True)
    if ran.returncode:
        return [("the result is wrong by itself", (ran.stdout + ran.stderr)[-600:])]
    return account_wrong(folder, plan, folder / out)


def account_wrong(folder, plan, out):
    """Each term of the account from the lines and supplies; of small houses, how packs were opened, too."""
    try:
        reader = Reader(folder)
        there = reader.house(plan)
    except Exception:  # not a house that the oracle reads
        there = None
    try:
        if there is not None:
            wrong, _ = check.complaints(there, Result(there, out, reader.slots))
        else:
            wrong, _ = month.complaints(folder, out, plan)
    except Unfit as reason:
        wrong = [str(reason)]
    except Exception:  # nor this reader
        wrong = []
    return [("the account is wrong", "; ".join(wrong)[:400])] if wrong else []

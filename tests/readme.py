#!/usr/bin/env python3
"""Runs the commands shown in README.md and compares what is shown with what they print.

`tests/readme.py PROGRAM`: in each ```console block, a line that starts with `$ ` is a command, and
the lines after it are of its output, in order; a line `...` stands for any lines. A ```yaml block
with a path is written there before what follows it is run.
"""
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile


def shown(readme, place):
    """Commands with the lines that are shown of what they print; writes the files in between."""
    for kind, path, block in re.findall(r"```(console|yaml) ?(\S*)\n(.*?)```", readme, re.DOTALL):
        if kind == "yaml":
            (pathlib.Path(place) / path).parent.mkdir(parents=True, exist_ok=True)
            (pathlib.Path(place) / path).write_text(block)
            continue
        for part in re.split(r"^\$ ", block, flags=re.MULTILINE)[1:]:
            command, *lines = part.rstrip("\n").split("\n")
            yield command, lines


def missing(lines, printed):
    """The first shown line that does not follow where it should."""
    at = 0
    free = False  # whether other lines may come before the next one
    for line in lines:
        if line == "...":
            free = True
            continue
        if free:
            while at < len(printed) and printed[at] != line:
                at += 1
        if at >= len(printed) or printed[at] != line:
            return line
        at += 1
        free = False
    return None


def main():
    program = str(pathlib.Path(sys.argv[1]).resolve())
    root = pathlib.Path(__file__).resolve().parent.parent
    wrong = 0
    commands = 0
    with tempfile.TemporaryDirectory() as place:
        for folder in ("recipes", "plans"):
            shutil.copytree(root / folder, pathlib.Path(place) / folder)
        for command, lines in shown((root / "README.md").read_text(), place):
            real = command.replace("build/release/manciple", program)
            said = subprocess.run(real, shell=True, cwd=place, capture_output=True, text=True)
            commands += 1
            line = missing(["...", *lines], said.stdout.split("\n"))
            if line is not None:
                wrong += 1
                print(f"$ {command}\nREADME shows, but it does not print: {line!r}\n{said.stderr}")
    print(f"{commands} commands of README.md run, {wrong} print something else")
    return 1 if wrong or commands == 0 else 0


if __name__ == "__main__":
    sys.exit(main())

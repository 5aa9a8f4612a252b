"""The measuring of build.sh: PROGRAM YAML_BENCH HOUSE [MOST]."""

import glob
import os
import pathlib
import subprocess
import sys

RUNS = 7
MANY = 10_000  # recipes that no plan asks for


def measure(command, cwd):
    """Milliseconds of processor time, and kilobytes at the peak."""
    process = subprocess.Popen(command, cwd=cwd, stdout=subprocess.DEVNULL,
                               stderr=subprocess.DEVNULL)
    _, status, usage = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    if process.returncode != 0:
        sys.exit(f"{command[0]} ended with {process.returncode}")
    return 1000 * (usage.ru_utime + usage.ru_stime), usage.ru_maxrss


def add_recipes(house):
    recipes = pathlib.Path(house) / "recipes"
    one = (recipes / "minestrone.yaml").read_text(encoding="utf-8")
    for i in range(MANY):
        text = one.replace("name: ", f"name: {i} ", 1)
        (recipes / f"spare-{i}.yaml").write_text(text, encoding="utf-8")


def main(program, yaml_bench, house, most):
    files = sorted(glob.glob("**/*.yaml", root_dir=house, recursive=True))
    builds, yaml, peak = [], [], 0
    for _ in range(RUNS):  # in turn, so that both see the same machine
        command = [program, "build", "plans/2027-03.yaml"]
        took, memory = measure(command, house)
        builds.append(took)
        peak = max(peak, memory)
        said = subprocess.run([yaml_bench, "5", *files], cwd=house, check=True,
                              capture_output=True, text=True).stdout
        yaml.append(float(said))
    ratio = min(builds) / min(yaml)
    print(f"build of the demo   {min(builds):8.1f} ms")
    print(f"yaml-cpp alone      {min(yaml):8.1f} ms for the same {len(files)} files")
    print(f"ratio               {ratio:8.2f}")
    print(f"peak memory         {peak / 1024:8.1f} MB")
    add_recipes(house)
    crowded = min(measure([program, "build", "plans/2027-03.yaml"], house)[0] for _ in range(RUNS))
    print(f"with {MANY} recipes {crowded:8.1f} ms, {crowded / min(builds):.2f} times")
    if most and ratio > float(most):
        sys.exit(f"the ratio is above {most}")


main(*sys.argv[1:5])

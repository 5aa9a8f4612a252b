"""What shells complete and the manual page tell of every command and option that --help tells of.

usage: told.py PROGRAM
"""
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

program = str(pathlib.Path(sys.argv[1]).resolve())


def said(*words):
    return subprocess.run([program, *words], capture_output=True, text=True, check=True).stdout


def commands():
    listed = said("--help").split("Subcommands:", 1)[1]
    return re.findall(r"^  (\S+)", listed, re.MULTILINE)


def options(command):
    return sorted(set(re.findall(r"--[a-z]+(?:-[a-z]+)*", said(command, "--help").split("Options:", 1)[1])))


# What may stand at each argument, as far as a shell can know.
STANDS = {
    "PLAN": "a file", "FILE": "a file", "FILES": "a file", "BEFORE": "a file", "AFTER": "a file", "FOLDER": "a folder",
    "KIND": "words", "SHELL": "words", "FOOD": "anything", "DATE": "anything", "AMOUNT": "anything",
}


def arguments(command):
    listed = said(command, "--help").split("Options:", 1)[0]
    return re.findall(r"^  ([A-Z]+) ", listed.partition("Positionals:")[2], re.MULTILINE)


def check_arguments(script, command):
    """Every argument's name is known here, and the first one is completed by what may stand there."""
    names = arguments(command)
    for name in names:
        assert name in STANDS, (command, name)
    if names:
        got = bash_completes(script, f"manciple {command} q")
        right = {"a file": ["q.yaml", "quinces"], "a folder": ["quinces"]}.get(STANDS[names[0]], [])
        assert sorted(got) == right, (command, names[0], got)
        words = bash_completes(script, f"manciple {command} ")
        assert STANDS[names[0]] != "words" or len(words) >= 3, (command, words)
        assert STANDS[names[0]] != "anything" or not words, (command, words)


def bash_completes(script, line):
    words = line.split(" ")
    asked = subprocess.run(
        ["bash", "-c", 'source "$0"; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _manciple; printf "%s\\n" "${COMPREPLY[@]}"',
         script, *words], capture_output=True, text=True, check=True, cwd=pathlib.Path(script).parent)
    assert asked.stderr == "", asked.stderr
    return asked.stdout.split()


def clean(tool, *words):
    """Runs what checks a file, where it is installed."""
    if shutil.which(tool) is None:
        print(f"{tool} is not installed: it was NOT asked")
        return
    ran = subprocess.run([tool, *words], capture_output=True, text=True)
    assert ran.returncode == 0 and ran.stderr == "", (tool, ran.stderr)


told = {shell: said("completion", shell) for shell in ("bash", "zsh", "fish")}
told["man"] = said("manual")
all_commands = commands()
assert len(all_commands) >= 13, all_commands
with tempfile.TemporaryDirectory() as folder:
    files = {name: f"{folder}/{name}" for name in told}
    for name, text in told.items():
        pathlib.Path(files[name]).write_text(text)
    pathlib.Path(folder, "q.yaml").touch()
    pathlib.Path(folder, "quinces").mkdir()
    assert set(bash_completes(files["bash"], "manciple ")) == {*all_commands, "--help", "--version"}
    assert bash_completes(files["bash"], "manciple sch") == ["schema"]
    assert bash_completes(files["bash"], "manciple new x --measures m") == ["metric"]
    assert bash_completes(files["bash"], "manciple keys house") == ["household"]
    count = 0
    for command in all_commands:
        check_arguments(files["bash"], command)
        for name, text in told.items():
            assert re.search(rf"\b{command}\b", text), (name, command)
        assert set(bash_completes(files["bash"], f"manciple {command} --")) == set(options(command)), command
        page = told["man"].split(f".SS {command}\n", 1)[1].split(".SS ", 1)[0].replace("\\-", "-")
        for option in options(command):
            assert f".B {option}\n" in page, (command, option)
            if option != "--help":
                assert f"seen_subcommand_from {command}' -l {option[2:]}" in told["fish"], (command, option)
            arm = told["zsh"].split(f"\n  {command})\n", 1)[1].split(";;", 1)[0]
            assert f"'{option}[" in arm, (command, option)
            count += 1
    clean("bash", "-n", files["bash"])
    clean("zsh", "-n", files["zsh"])
    clean("fish", "-n", files["fish"])
    clean("groff", "-man", "-ww", "-z", files["man"])
print(f"{len(all_commands)} commands with {count} options are told of everywhere")

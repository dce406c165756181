#!/usr/bin/env python3
"""Changes one operator of core/trade at a time and asks whether a test notices.

A test that passes whatever the code says proves nothing. Each operator between two blanks (clang-format
leaves no blank inside <>, and none at a pointer) is changed to its neighbour, its file compiled anew and
the tests of core/trade and tests/reference that need no Qt run, those of its folder first. With --all what
lives is put before the programs of build/ci, which have to be built: every test of tests/reference, and of
tests/core those whose path names its folder. What no test noticed is listed, for a person to read: some
changes are none, as < for <= at a tie.

    tests/trust/checks/mutants.py [--take N] [--seed S] [--only PATH] [--jobs J] [--list] [--all]

Nothing in the tree is changed. What came of it stands in tests/trust/checks.md.
"""

import argparse
import concurrent.futures
import fnmatch
import functools
import os
import pathlib
import random
import re
import resource
import subprocess
import sys

TREE = pathlib.Path(__file__).resolve().parents[3]
BUILD = TREE / "build" / "checks" / "mutants"
CI = TREE / "build" / "ci"
FLAGS = ["-std=c++20", "-O1", "-w", "-I", str(TREE)]
CHANGED = {
    "+": "-", "-": "+", "*": "/", "/": "*", "+=": "-=", "-=": "+=", "*=": "/=", "/=": "*=",
    "<": "<=", "<=": "<", ">": ">=", ">=": ">", "==": "!=", "!=": "==", "&&": "||", "||": "&&",
}
OPERATOR = re.compile(r" (\+=|-=|\*=|/=|<=|>=|==|!=|&&|\|\||[-+*/<>])(?=[ \n])")
# Comments, strings and characters hold no operators.
NO_CODE = re.compile(r"//[^\n]*|/\*.*?\*/|\"(?:\\.|[^\"\\\n])*\"|'(?:\\.|[^'\\\n])'|^#[^\n]*",
                     re.S | re.M)
MOST_SECONDS = 60  # of computing; all tests together take a few, a change that loops is noticed so


def run(command, **more):
    return subprocess.run(command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, **more)


def computing_limited():
    """Of the machine's time, not of the clock: a busy machine must not be taken for a test that fails."""
    resource.setrlimit(resource.RLIMIT_CPU, (MOST_SECONDS, MOST_SECONDS))


def mutants_of(path):
    text = path.read_text()
    code = NO_CODE.sub(lambda m: re.sub(r"[^\n]", "_", m.group(0)), text)
    for found in OPERATOR.finditer(code):
        yield path, found.start(1), found.group(1)


def place(mutant):
    path, at, operator = mutant
    text = path.read_text()
    line = text.count("\n", 0, at) + 1
    return f"{path.relative_to(TREE)}:{line}: {operator} -> {CHANGED[operator]}: " + \
        text.splitlines()[line - 1].strip()


def needs_no_qt(path):
    return not re.search(r'#include (<Q|"core/(?!trade/|units/|support/|model/)|"tests/)', path.read_text())


def compiled(source, target):
    target.parent.mkdir(parents=True, exist_ok=True)
    if target.exists() and target.stat().st_mtime > source.stat().st_mtime:
        return
    done = run(["g++", *FLAGS, "-c", str(source), "-o", str(target)])
    if done.returncode:
        sys.exit(done.stdout)


def object_of(path):
    return BUILD / "plain" / path.relative_to(TREE).with_suffix(".o")


def suites_of(pattern, below="tests/core/trade"):
    names = set()
    for path in sorted((TREE / below).rglob("*_test.cpp")):
        if not fnmatch.fnmatch(str(path.relative_to(TREE / below)), pattern):
            continue
        names.update(re.findall(r"^TEST(?:_F|_P)?\((\w+),", path.read_text(), re.M))
    return ":".join(f"{name}.*:*/{name}.*" for name in sorted(names))


@functools.cache
def linking(program):
    """How build/ci links it, up to the program's name and from there on."""
    told = run(["ninja", "-C", str(CI), "-t", "commands", program]).stdout.splitlines()[-1]
    found = re.search(rf"/c\+\+ (.*) -o bin/{program} (.*?) && ", told)
    if not found:
        sys.exit(f"build/ci does not say how it links {program}; is it configured?")
    return found.group(1).split(), found.group(2).split()


def noticed_in_ci(work, changed, folder):
    """The changed functions stand in front: the linker takes the first of a name."""
    for program, suites in (("reference_tests", "*"), ("core_tests", suites_of(f"*{folder}*", "tests/core"))):
        if not suites:
            continue
        before, after = linking(program)
        target = work / program
        done = run(["c++", str(changed), *before, "-Wl,--allow-multiple-definition", "-o", str(target), *after],
                   cwd=CI)
        if done.returncode:
            sys.exit(done.stdout[-4000:])
        if run([str(target), "--gtest_fail_fast", "--gtest_brief=1", f"--gtest_filter={suites}"],
               cwd=CI / "tests", preexec_fn=computing_limited).returncode:
            return True
    return False


def tried(number, mutant, plain, tests, in_ci):
    """'noticed', 'lived' or 'no program'."""
    path, at, operator = mutant
    text = path.read_text()
    work = BUILD / f"work{number}"
    work.mkdir(parents=True, exist_ok=True)
    source = work / path.name
    source.write_text(text[:at] + CHANGED[operator] + text[at + len(operator):])
    changed = work / "changed.o"
    if run(["g++", *FLAGS, "-c", str(source), "-o", str(changed)]).returncode:
        return "no program"
    program = work / "tests"
    others = [str(each) for each in plain if each != object_of(path)]
    if run(["g++", "-o", str(program), str(changed), str(tests), *others, "-lgmock", "-lgtest", "-lgtest_main",
            "-lglpk", "-lpthread"]).returncode:
        return "no program"
    folder = path.relative_to(TREE / "core" / "trade").parts[0]
    near = suites_of(f"{folder}/*")
    for chosen in filter(None, (near, f"-{near}" if near else "*")):
        done = run([str(program), "--gtest_fail_fast", "--gtest_brief=1",
                    f"--gtest_filter={chosen}"], cwd=TREE, preexec_fn=computing_limited)
        if done.returncode:
            return "noticed"
    return "noticed" if in_ci and noticed_in_ci(work, changed, folder) else "lived"


def main():
    asked = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawTextHelpFormatter)
    asked.add_argument("--take", type=int, help="so many of them, chosen by the seed")
    asked.add_argument("--seed", type=int, default=20280229)
    asked.add_argument("--only", default="", help="files whose path holds this")
    asked.add_argument("--jobs", type=int, default=os.cpu_count())
    asked.add_argument("--list", action="store_true", help="only count them")
    asked.add_argument("--all", action="store_true", help="what lives, before the tests of build/ci too")
    asked = asked.parse_args()

    trade = sorted((TREE / "core" / "trade").rglob("*.cpp"))
    mutants = [each for path in trade if asked.only in str(path) for each in mutants_of(path)]
    every = len(mutants)
    if asked.take and asked.take < every:
        mutants = sorted(random.Random(asked.seed).sample(mutants, asked.take))
    print(f"{every} operators, {len(mutants)} of them changed, one at a time", flush=True)
    if asked.list:
        return

    below = [path for folder in ("units", "support", "model") for path in (TREE / "core" / folder).rglob("*.cpp")
             if needs_no_qt(path)]
    tests = [path for folder in ("core/trade", "reference") for path in (TREE / "tests" / folder).rglob("*_test.cpp")
             if needs_no_qt(path)]
    with concurrent.futures.ThreadPoolExecutor(asked.jobs) as pool:
        list(pool.map(lambda path: compiled(path, object_of(path)), [*trade, *below, *tests]))
    plain = [object_of(path) for path in [*trade, *below]]
    gathered = BUILD / "tests.o"
    run(["ld", "-r", "-o", str(gathered), *[str(object_of(path)) for path in tests]], check=True)
    program = BUILD / "plain_tests"
    linked = run(["g++", "-o", str(program), str(gathered), *map(str, plain), "-lgmock", "-lgtest", "-lgtest_main",
                  "-lglpk", "-lpthread"])
    if linked.returncode:
        sys.exit(linked.stdout[-4000:])
    unchanged = run([str(program), "--gtest_brief=1"], cwd=TREE)
    if unchanged.returncode:
        sys.exit("the tests do not pass on the tree as it is:\n" + unchanged.stdout[-4000:])

    told = {"noticed": 0, "lived": 0, "no program": 0}
    free = list(range(asked.jobs))

    def one(mutant):
        number = free.pop()
        try:
            return mutant, tried(number, mutant, plain, gathered, asked.all)
        finally:
            free.append(number)

    with concurrent.futures.ThreadPoolExecutor(asked.jobs) as pool:
        for mutant, outcome in pool.map(one, mutants):
            told[outcome] += 1
            if outcome == "lived":
                print("lived: " + place(mutant), flush=True)
            if sum(told.values()) % 50 == 0:
                print(f"  {sum(told.values())}: {told}", flush=True)
    print(told)


if __name__ == "__main__":
    main()

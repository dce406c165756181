#!/usr/bin/env python3
"""Which lines of core and ui the tests run: built with counters, every test run once, the counts of
gcov added up a file. Per folder the share of lines run, and the files least run.

    tests/trust/checks/coverage.py [--no-run] [-j N] [ctest's own words …]

What came of it stands in tests/trust/checks.md. Bars: core 90 %, ui 75 %.
"""

import collections
import concurrent.futures
import json
import os
import pathlib
import subprocess
import sys

TREE = pathlib.Path(__file__).resolve().parents[3]
BUILD = TREE / "build" / "coverage"
BARS = {"core": 90, "ui": 75}


def counted(counts):
    """gcov's word on one object: a file's lines and how often each was run."""
    told = subprocess.run(["gcov", "--json-format", "--stdout", str(counts)], cwd=counts.parent,
                          stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, check=True).stdout
    lines = []
    for document in told.splitlines():
        for file in json.loads(document)["files"]:
            path = pathlib.Path(file["file"])
            path = path if path.is_absolute() else BUILD / path
            try:
                name = str(pathlib.Path(os.path.normpath(path)).relative_to(TREE))
            except ValueError:
                continue
            if name.split("/")[0] in BARS:
                lines.append((name, [(each["line_number"], each["count"]) for each in file["lines"]]))
    return lines


def main():
    words = sys.argv[1:]
    if "--no-run" in words:
        words.remove("--no-run")
    else:
        subprocess.run(["cmake", "-C", str(TREE / "app/cmake/coverage.cmake"), "-S", str(TREE), "-B",
                        str(BUILD), "-G", "Ninja"], check=True, stdout=subprocess.DEVNULL)
        subprocess.run(["cmake", "--build", str(BUILD)], check=True)
        for old in BUILD.rglob("*.gcda"):
            old.unlink()
        # A test that fails is told by tests/run; what it ran counts here all the same.
        subprocess.run(["ctest", "--test-dir", str(BUILD), "-LE", "layout", "--quiet", *(words or ["-j2"])])
    runs = collections.defaultdict(lambda: collections.defaultdict(int))
    with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
        for lines in pool.map(counted, sorted(BUILD.rglob("*.gcda"))):
            for name, each in lines:
                for number, count in each:
                    runs[name][number] += count
    folders = collections.defaultdict(lambda: [0, 0])
    files = []
    for name, lines in runs.items():
        run = sum(1 for count in lines.values() if count)
        files.append((run / max(1, len(lines)), len(lines) - run, name))
        parts = name.split("/")
        for depth in (1, 2):
            if len(parts) > depth:
                folder = folders["/".join(parts[:depth])]
                folder[0] += run
                folder[1] += len(lines)
    for name, (run, every) in sorted(folders.items()):
        print(f"{name:24} {100 * run / every:6.2f} %  {run} of {every} lines")
    print("least run:")
    for share, left, name in sorted(files, key=lambda file: -file[1])[:40]:
        print(f"  {100 * share:5.1f} %  {left:4} lines not run  {name}")
    missed = [name for name, bar in BARS.items()
              if 100 * folders[name][0] < bar * max(1, folders[name][1])]
    sys.exit(f"below its bar: {', '.join(missed)}" if missed else 0)


if __name__ == "__main__":
    main()

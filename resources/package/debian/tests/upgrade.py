"""Makes a season file of every older shape from the steps the source has, opens it with the installed
program, and looks whether what was in it is kept and a true copy of the old file stands beside it."""
import glob
import hashlib
import json
import os
import shutil
import sqlite3
import subprocess
import sys
import tempfile

APPLICATION_ID = 0x436D6257  # core/storage/migrations.h


def cli(*words, exits=0):
    ran = subprocess.run(["combwright-cli", *words], capture_output=True, text=True)
    if ran.returncode != exits:
        sys.exit(f"combwright-cli {' '.join(words)}: {ran.returncode}\n{ran.stdout}{ran.stderr}")
    return ran.stdout


def statements(sql):
    """Parted by the marker lines, comments left out, as core/storage/migrations.cpp does it."""
    text = ""
    for line in sql.split("\n"):  # the program keeps what SQLite keeps: each blank line counts
        if line == "-- next":
            yield text
            text = ""
        elif not line.startswith("--"):
            text += line + "\n"
    if text.strip():
        yield text


def make(path, steps):
    file = sqlite3.connect(path, isolation_level=None)
    file.execute(f"PRAGMA application_id = {APPLICATION_ID}")
    for number, step in enumerate(steps, 1):
        with open(step, encoding="utf-8") as opened:
            sql = opened.read()
        file.execute("BEGIN")
        for statement in statements(sql):
            file.execute(statement)
        name = os.path.basename(step)[5:-4]
        file.execute("INSERT INTO schema_step (step, name, digest, program) VALUES (?, ?, ?, ?)",
                     (number, name, hashlib.sha256(sql.encode()).hexdigest(), "older"))
        file.execute(f"PRAGMA user_version = {number}")
        file.execute("COMMIT")
    file.execute("INSERT INTO file_info (id, min_reader, made_by) VALUES (1, 1, 'older')")
    for order, yard in enumerate(("Mill Lane", "Über dem Bach"), 1):
        file.execute("INSERT INTO yard (name, walk_order, since) VALUES (?, ?, '2024-04-01')",
                     (yard, order))
    file.close()


def shape_and_yards(path):
    file = sqlite3.connect(f"file:{path}?mode=ro", uri=True)
    answer = (file.execute("PRAGMA user_version").fetchone()[0],
              file.execute("SELECT id, name, walk_order, since FROM yard ORDER BY id").fetchall(),
              file.execute("PRAGMA integrity_check").fetchone()[0])
    file.close()
    return answer


def main():
    steps = sorted(glob.glob(os.path.join(sys.argv[1], "0*.sql")))
    if len(steps) < 2:
        sys.exit(f"no steps in {sys.argv[1]}")
    for older in range(1, len(steps)):
        folder = tempfile.mkdtemp(dir=os.environ.get("AUTOPKGTEST_TMP"))
        path = os.path.join(folder, "season.combwright")
        make(path, steps[:older])
        before = shape_and_yards(path)
        # One deed is what brings a keeper's file up to date: opening it to write.
        line = json.dumps({"do": "add-yard", "on": "2027-04-01", "yard_name": "New"})
        script = os.path.join(folder, "new.play")
        with open(script, "w", encoding="utf-8") as out:
            out.write(line + "\n")
        cli("play", path, script)
        # The yards were put there by hand, not by a step: that, and nothing else, is to be found.
        told = cli("check", path, exits=1)
        found = [said for said in told.splitlines() if said.strip()]
        assert found == [f"yard #{number}: is in the file, and no step put it there"
                         for number in (1, 2)], (older, found)
        cli("undo", path)

        version, yards, whole = shape_and_yards(path)
        assert version == len(steps), (older, version)
        assert whole == "ok" and yards == before[1], (older, whole, yards)
        copies = [os.path.join(root, name) for root, _, names in os.walk(folder) for name in names
                  if name.endswith(".combwright") and os.path.join(root, name) != path]
        assert len(copies) == 1, (older, copies)
        assert shape_and_yards(copies[0]) == before, (older, copies, before)
        print(f"shape {older} -> {version}: kept, with its copy {os.path.basename(copies[0])}")
        shutil.rmtree(folder)


main()

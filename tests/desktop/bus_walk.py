#!/usr/bin/python3
# What a screen reader hears of the real window, over the bus of the desktop: bus_walk.py COMBWRIGHT
# COMBWRIGHT-CLI. A display and a bus of its own are made for the walk and ended after it; every
# place and page of the sample season is opened by pressing its word over the bus. Asked there: all
# that takes the keyboard has a name and says what it is, a drawing has its sentence, a cell of a
# table its words, and rail and pages come in the order they stand in. A missing bus is a failure.
import os
import signal
import subprocess
import sys
import tempfile
import time

LIMIT_S = 85          # for the whole walk
SETTLE_S = 0.15       # the tree stays as it was for so long: the page is filled
CELLS_ASKED = 60      # of one table


def season_day():
    return "2027-07-29"


def outer(window, commands):
    """Display, folders and bus; the walk itself is this file again within them."""
    with tempfile.TemporaryDirectory(prefix="combwright-bus-") as home:
        shown, number = os.pipe()
        display = subprocess.Popen(
            ["Xvfb", "-displayfd", str(number), "-screen", "0", "1400x900x24", "-nolisten", "tcp"],
            pass_fds=[number], stderr=subprocess.DEVNULL)
        os.close(number)
        try:
            with os.fdopen(shown) as first_line:
                name = first_line.readline().strip()
            if not name:
                sys.exit("Xvfb gave no display")
            season = os.path.join(home, "season.combwright")
            runtime = os.path.join(home, "run")
            os.mkdir(runtime, 0o700)
            env = {"PATH": os.environ["PATH"], "HOME": home, "DISPLAY": ":" + name,
                   "XDG_RUNTIME_DIR": runtime, "XDG_CONFIG_HOME": home + "/config",
                   "XDG_STATE_HOME": home + "/state", "XDG_CACHE_HOME": home + "/cache",
                   "LC_ALL": "C.UTF-8", "TZ": "UTC", "QT_QPA_PLATFORM": "xcb",
                   "QT_LINUX_ACCESSIBILITY_ALWAYS_ON": "1", "GSETTINGS_BACKEND": "memory",
                   "NO_AT_BRIDGE": "1"}
            subprocess.run([commands, "demo", season], env=env, check=True,
                           stdout=subprocess.DEVNULL)
            walk = subprocess.Popen(
                ["dbus-run-session", "--", sys.executable, os.path.abspath(__file__), "--within",
                 window, season], env=env, start_new_session=True)
            try:
                return walk.wait(LIMIT_S)
            except subprocess.TimeoutExpired:
                print(f"the walk took longer than {LIMIT_S} s")
                return 1
            finally:
                try:
                    os.killpg(walk.pid, signal.SIGKILL)
                except ProcessLookupError:
                    pass
        finally:
            display.terminate()
            display.wait()


class Walk:
    def __init__(self, atspi):
        self.atspi = atspi
        self.faults = []
        self.told = set()
        self.objects = self.focusable = self.cells = self.drawings = self.pages = 0
        self.ordered = 0
        self.screen = atspi.CoordType.SCREEN
        roles = atspi.Role
        self.mute = {roles.INVALID, roles.UNKNOWN, roles.REDUNDANT_OBJECT, roles.PANEL}
        self.drawn = {roles.IMAGE, roles.CHART, roles.CANVAS, roles.DRAWING_AREA}
        self.pressed = {roles.RADIO_BUTTON, roles.PUSH_BUTTON}

    def fault(self, where, text):
        # What stands on every page is told once.
        if text not in self.told:
            self.told.add(text)
            self.faults.append(f"{where}: {text}")

    def has(self, one, state):
        return one.get_state_set().contains(getattr(self.atspi.StateType, state))

    def children(self, one):
        for i in range(one.get_child_count()):
            child = one.get_child_at_index(i)
            if child is not None:
                yield child

    def is_table(self, one):
        return one.get_role() in (self.atspi.Role.TABLE, self.atspi.Role.TREE_TABLE)

    def shown(self, one, path=()):
        """All that is to be seen, in the order of the bus, with the way to it."""
        for child in self.children(one):
            if not self.has(child, "SHOWING"):
                continue
            yield child, path
            # Cells are asked of the table.
            if not self.is_table(child):
                yield from self.shown(child, path + (child,))

    def named(self, one):
        return f"{one.get_role_name()} '{one.get_name()}'"

    def look(self, where, shown):
        self.pages += 1
        for one, way in shown:
            self.objects += 1
            role, name = one.get_role(), one.get_name().strip()
            if self.is_table(one):
                self.hear_table(where, one)
            if not self.has(one, "FOCUSABLE"):
                continue
            self.focusable += 1
            if not name:
                self.fault(where, f"{self.named(one)} takes the keyboard and has no name, in "
                           + " / ".join(up.get_name() for up in way if up.get_name()))
            if role in self.mute:
                self.fault(where, f"{self.named(one)} says not what it is")
            # A board, a chart, or a text longer than its room.
            if role in self.drawn:
                self.drawings += 1
                if not one.get_description().strip():
                    self.fault(where, f"{self.named(one)} has no sentence")
        self.hear_order(where, shown)

    def hear_table(self, where, table):
        grid = table.get_table_iface()
        if grid is None:
            self.fault(where, f"{self.named(table)} shows no cells on the bus")
            return
        asked = named = 0
        for row in range(grid.get_n_rows()):
            for column in range(grid.get_n_columns()):
                if asked == CELLS_ASKED:
                    break
                asked += 1
                cell = grid.get_accessible_at(row, column)
                if cell is None:
                    self.fault(where, f"{self.named(table)}: no cell {row}, {column}")
                elif cell.get_name().strip():
                    named += 1
        self.cells += asked
        if asked and not named:
            self.fault(where, f"{self.named(table)}: none of its cells says its words")

    def hear_order(self, where, shown):
        """The words of one group, as of the rail, come from the top left to the bottom right."""
        groups = {}
        for one, way in shown:
            if way and one.get_role() in self.pressed and \
                    way[-1].get_name().startswith(("Places", "Pages of")):
                groups.setdefault(way[-1].get_name(), []).append(one)
        for group, ones in groups.items():
            self.ordered += len(ones)
            at = []
            for one in ones:
                box = one.get_extents(self.screen)
                at.append((box.y, box.x, one.get_name()))
            if at != sorted(at):
                self.fault(where, f"{group}: read as " + ", ".join(name for *_, name in at)
                           + "; seen as " + ", ".join(name for *_, name in sorted(at)))

    def verdict(self, places):
        print(f"{places} places, {self.pages} pages looked at, {self.objects} objects, "
              f"{self.focusable} that take the keyboard, {self.drawings} drawings, "
              f"{self.cells} cells, {self.ordered} words in their order")
        # A walk that found little looked at nothing.
        for what, found, least in (("places", places, 7), ("pages", self.pages, 12),
                                   ("controls", self.focusable, 150),
                                   ("drawings", self.drawings, 5), ("cells", self.cells, 100),
                                   ("words in order", self.ordered, 50)):
            if found < least:
                self.faults.append(f"only {found} {what} were found; at least {least} are there")
        for fault in self.faults:
            print(fault)
        return 1 if self.faults else 0


def within(program, season):
    import gi
    gi.require_version("Atspi", "2.0")
    from gi.repository import Atspi, GLib

    if Atspi.init() not in (0, 1):
        sys.exit("the bus of the desktop cannot be reached")
    # A busy machine answers late; what was true a page ago is asked anew.
    Atspi.set_timeout(15000, 15000)
    Atspi.get_desktop(0).set_cache_mask(Atspi.Cache.NONE)
    walk = Walk(Atspi)
    window = subprocess.Popen([program, "--day", season_day(), season])

    def turn():
        context = GLib.MainContext.default()
        while context.pending():
            context.iteration(False)

    def until(asked, what, seconds=30.0):
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            turn()
            if window.poll() is not None:
                sys.exit(f"the window ended by itself ({window.returncode}) before {what}")
            try:
                found = asked()
            except GLib.Error:
                found = None
            if found:
                return found
            time.sleep(0.05)
        sys.exit(f"after {seconds} s still not: {what}")

    def frame():
        for app in walk.children(Atspi.get_desktop(0)):
            if app.get_process_id() != window.pid:
                continue
            app.set_cache_mask(Atspi.Cache.NONE)
            for top in walk.children(app):
                if walk.has(top, "SHOWING"):
                    return top
        return None

    def words(group):
        """The words one of which is open: of the rail, or of the pages of the place shown."""
        return [one for one, way in list(walk.shown(top))
                if one.get_role() == Atspi.Role.RADIO_BUTTON
                and any(up.get_name().startswith(group) for up in way)]

    def settled():
        """What is shown, once it stays so."""
        before, since = None, time.monotonic()
        end = since + 10
        while time.monotonic() < end:
            try:
                now = list(walk.shown(top))
                outline = [(len(way), one.get_role(), one.get_name()) for one, way in now]
            except GLib.Error:
                outline = None
            if outline is not None and outline == before and \
                    time.monotonic() - since >= SETTLE_S:
                return now
            if outline != before:
                before, since = outline, time.monotonic()
            time.sleep(SETTLE_S / 3)
        sys.exit("the page does not come to rest")

    def open_word(group, name):
        def press():
            for word in words(group):
                if word.get_name() == name:
                    return word if word.get_action_iface().do_action(0) else None
            return None
        until(press, f"{name} can be pressed")
        until(lambda: any(word.get_name() == name and walk.has(word, "CHECKED")
                          for word in words(group)), f"{name} is open")

    top = until(frame, "the window on the bus")
    rail = until(lambda: [word.get_name() for word in words("Places")], "the rail")
    for name in rail:
        open_word("Places", name)
        walk.look(name, settled())
        for page in [word.get_name() for word in words("Pages of")]:
            open_word("Pages of", page)
            walk.look(f"{name}, {page}", settled())
    window.terminate()
    window.wait(10)
    return walk.verdict(len(rail))


if __name__ == "__main__":
    if sys.argv[1] == "--within":
        sys.exit(within(*sys.argv[2:4]))
    sys.exit(outer(*sys.argv[1:3]))

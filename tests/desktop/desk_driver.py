"""The desk as a person meets it: keys go in, and what a screen reader would find comes out."""
import os
import re
import resource
import signal
import subprocess
import time

import gi

gi.require_version("Atspi", "2.0")
from gi.repository import Atspi  # noqa: E402

# On a busy machine the program answers late, and that is no failure.
Atspi.set_timeout(30000, 30000)
PATIENCE = 60  # seconds until something that should happen counts as missing
HERE = os.path.dirname(os.path.abspath(__file__))


class Missing(Exception):
    pass


class Asked:
    """What is asked: the controls stay from question to question, the words and how far it is do not."""

    def __init__(self, node):
        self.node = node
        self.words = (node.get_name(), node.get_description())

    def __getattr__(self, name):
        return getattr(self.node, name)

    def __eq__(self, other):
        return isinstance(other, Asked) and self.words == other.words


class Desk:
    def __init__(self, program, folder, *arguments):
        self.folder = folder
        self.errors = open(os.path.join(folder, "stderr"), "a+")
        # With a limit to the size of files writing fails as on a full disk, once its signal is ignored.
        self.process = subprocess.Popen([program, *arguments], stderr=self.errors, preexec_fn=lambda: signal.signal(signal.SIGXFSZ, signal.SIG_IGN))
        self.app = self.wait(self._app, "the program")
        self.wait(lambda: self.find("frame"), "the window")

    def _app(self):
        desktop = Atspi.get_desktop(0)
        for i in range(desktop.get_child_count()):
            app = desktop.get_child_at_index(i)
            if app is not None and app.get_process_id() == self.process.pid:
                return app
        return None

    def fill_disk(self, is_full=True):
        most = resource.RLIM_INFINITY
        resource.prlimit(self.process.pid, resource.RLIMIT_FSIZE, (0 if is_full else most, most))

    # what is there
    def all(self, top=None, shown_only=True):
        stack = [top or self.app]
        while stack:
            node = stack.pop()
            if node is None:
                continue
            try:
                states = node.get_state_set()
                if shown_only and node is not self.app and not states.contains(Atspi.StateType.SHOWING) and node.get_role_name() not in ("application",):
                    continue
                yield node
                children = [node.get_child_at_index(i) for i in range(node.get_child_count())]
            except gi.repository.GLib.Error:
                continue
            stack.extend(reversed(children))

    def find(self, role, name=None):
        for node in self.all():
            if node.get_role_name() == role and (name is None or re.search(name, node.get_name() or "")):
                return node
        return None

    def question(self):
        for node in self.all():
            if node.get_role_name() == "panel" and (node.get_description() or "").startswith("Question"):
                return Asked(node)
        return None

    def texts(self):
        return [node.get_name() for node in self.all() if node.get_name()]

    # what is done
    def wait(self, what, words, patience=PATIENCE):
        end = time.monotonic() + patience
        while time.monotonic() < end:
            if self.process.poll() is not None:
                raise Missing(f"{words}: the program ended with {self.process.returncode}")
            try:
                found = what()
            except gi.repository.GLib.Error:
                found = None
            if found:
                return found
            time.sleep(0.03)
        raise Missing(f"{words} did not come; on the screen: {self.texts()[:60]}")

    def see(self, pattern):
        return self.wait(lambda: any(re.search(pattern, text) for text in self.texts()), f'"{pattern}"')

    def key(self, *keys):
        subprocess.run(["xdotool", "key", "--clearmodifiers", *keys], check=True)

    def type(self, text):
        subprocess.run(["xdotool", "type", "--clearmodifiers", "--delay", "2", text], check=True)

    def focused(self):
        for node in self.all():
            if node.get_state_set().contains(Atspi.StateType.FOCUSED) and node.get_role_name() not in ("frame", "application"):
                return node
        return None

    def focus_on(self, name):
        """Waits until the focus stands on what has this name."""
        return self.wait(lambda: (lambda at: at is not None and re.search(name, at.get_name() or "") and at)(self.focused()), f'focus on "{name}"')

    def kill(self):
        self.process.send_signal(signal.SIGKILL)
        self.process.wait()

    def close(self):
        self.key("ctrl+q")
        self.process.wait(timeout=PATIENCE)

    # what must not be
    def unnamed(self):
        """Controls that can be reached and have no name."""
        roles = {"push button", "toggle button", "text", "password text", "entry", "combo box", "check box", "radio button", "image", "menu", "menu item"}
        return [f"{node.get_role_name()} in {(node.get_parent() or node).get_name()!r}" for node in self.all()
                if node.get_role_name() in roles and not node.get_name()]

    def strange_messages(self):
        with open(os.path.join(HERE, "known_messages")) as file:
            known = [line.strip() for line in file if line.strip() and not line.startswith("#")]
        self.errors.flush()
        self.errors.seek(0)
        return [line.strip() for line in self.errors if line.strip() and not any(re.search(one, line) for one in known)]

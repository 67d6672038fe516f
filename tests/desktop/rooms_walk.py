"""Measurements, history, rules and client mode in the demo clinic, by keyboard. On every page each control has a name."""
import sys

from desk_driver import Desk

PROGRAM, WORK = sys.argv[1:3]
unnamed = []


def check_names(desk, page):
    unnamed.extend(f"{page}: {one}" for one in desk.unnamed())


def press(desk, name):
    """As a click on the button of this name."""
    desk.wait(lambda: (lambda at: at is not None and at.get_action_iface().do_action(0))(desk.find("push button", name)), f"the button {name}")


def move_to(desk, name):
    """Down the list until the focus stands on what has this name."""
    for _ in range(60):
        at = desk.focused()
        if at is not None and (at.get_name() or "").startswith(name):
            return
        before = at.get_name() if at is not None else ""
        desk.key("Down")
        desk.wait(lambda: desk.focused() is not None and desk.focused().get_name() != before, f"what comes after {before}")
    raise AssertionError(f"{name} is not in the list")


def open_client(desk):
    desk.focus_on("Set up a new clinic")
    desk.key("Tab", "Tab", "Return")
    desk.focus_on("Find a client")
    desk.type("Penhallow")
    desk.see("Idris Penhallow")
    desk.key("Return")
    desk.see("Born")
    check_names(desk, "client")


def measure(desk):
    desk.key("alt+7")
    desk.see("Measurements and tests")
    check_names(desk, "measurements")
    desk.key("space")
    desk.see(r"^4:\d\d$")
    desk.key("Return")
    desk.wait(lambda: desk.focused() is not None and desk.focused().get_name() == "What is the first number?", "the field")
    desk.type("136 mmHg")
    desk.key("Return")
    desk.see("^Systolic pressure, one reading, 136 mmHg")
    desk.see("8 mmHg more than last time")
    move_to(desk, "Rises from a chair")
    desk.see("no functional test")
    check_names(desk, "test left out")


def follow_up(desk):
    desk.key("alt+8")
    desk.see("A screening as it was")
    check_names(desk, "history")
    press(desk, "Check-in: how it goes")
    desk.focus_on("Sessions done")
    check_names(desk, "check-in")
    desk.type("3")
    desk.key("ctrl+Return")
    desk.see("This is needed")
    desk.key("Down", "Down")
    desk.key("ctrl+Return")
    desk.see("^How it goes, Sessions done: 3; New symptoms: no")


def read_rules(desk):
    desk.key("alt+9")
    desk.focus_on("Find rules")
    desk.type("systolic hold")
    desk.see("^[0-9]+ rules? found")
    check_names(desk, "rules")
    desk.key("Down")
    desk.see("If unknown")


def hand_over(desk):
    desk.key("alt+3")
    desk.wait(desk.question, "the interview")
    desk.key("F9")
    desk.see("^[0-9]+ answered")
    check_names(desk, "client mode")
    asked = desk.question().get_name()
    # Nothing leads out of it.
    desk.key("alt+1", "ctrl+n", "ctrl+l", "ctrl+q")
    desk.key("2")
    desk.wait(lambda: desk.question() is not None and desk.question().get_name() != asked, "the next question")
    assert desk.find("menu") is None, "no menu for a client"


desk = Desk(PROGRAM, WORK, "--date", "2026-11-25")
open_client(desk)
measure(desk)
follow_up(desk)
read_rules(desk)
hand_over(desk)
desk.kill()
assert not unnamed, "without a name: " + "; ".join(unnamed)
strange = desk.strange_messages()
assert not strange, "messages of the toolkit: " + "; ".join(strange[:10])

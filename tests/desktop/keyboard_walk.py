"""By keyboard alone: first run, a new client, the interview, killed and gone on with, decision, one
exercise swapped and one taken beyond the limits, killed again, a finding overridden, papers saved as PDF,
signing, plan; then the desk locks by itself. On every page each control has a name, and what is said in the
foot of the window can be read by others."""
import os
import re
import sys
import time

from answers import Person
from desk_driver import Desk

PROGRAM, WORK = sys.argv[1:3]
SOURCE = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
PASSPHRASE = "blue kettle seven gates"
LOCK_SECONDS = 3
unnamed = []


def check_names(desk, page):
    unnamed.extend(f"{page}: {one}" for one in desk.unnamed())


def set_up(desk):
    desk.focus_on("Set up a new clinic")
    check_names(desk, "start")
    desk.key("Return")
    desk.focus_on("Name of the clinic")
    check_names(desk, "set up")
    fields = ["Tarnside Movement Clinic", "112", "01632 960 417", None, "Ines Calloway", "physiotherapist", "ines", PASSPHRASE, PASSPHRASE]
    for field in fields:
        if field is not None:
            desk.type(field)
        desk.key("Tab")
    desk.key("Tab", "Return")
    desk.see("Write this down now")
    check_names(desk, "recovery phrase")
    desk.focus_on("It is written on paper")
    desk.key("space", "Tab")
    desk.focus_on("Go to work")
    desk.key("Return")
    desk.see("Nobody is in this clinic file yet")
    check_names(desk, "today, empty")


def new_client(desk):
    desk.key("ctrl+n")
    desk.focus_on("Given name")
    check_names(desk, "new client")
    for text in ("Maren", "Oakshott", "14 March 1963", "0417"):
        desk.type(text)
        desk.key("Return")
    desk.key("ctrl+Return")


# A list and a choice of several that need more room than the window has: their first line, and the key that says no.
HIGHER_THAN_THE_WINDOW = {"Ever told of high blood pressure": "Return", "Chest pain from the heart (angina)": "n"}
ONE_QUESTION = "one question"
SEEN = set()


def answered_so_far(desk):
    """What the page itself counts: "9 answered", or "9 answered, 2 left open"."""
    return max(int(text.split()[0]) for text in desk.texts() if re.match(r"[0-9]+ answered", text))


def interview(desk, person, stop_after=None):
    asked = 0
    while True:
        panel = desk.wait(lambda: desk.question() or "That was the last question" in desk.texts(), "a question")
        if panel is True or asked == stop_after:
            return asked
        asking = panel.get_name()
        if asked == 0:
            check_names(desk, "interview")
        rows = [node.get_name() or "" for node in desk.all(panel)]
        for first, key in HIGHER_THAN_THE_WINDOW.items():
            if any(row.startswith(first) for row in rows):
                desk.key(key)  # says no to all, of which the last is out of sight
                said_in_foot(desk, "^There is more below")
                assert desk.question() == panel, "no was said to what was out of sight"
                SEEN.add(first)
        if any(row.startswith("Yes: ") for row in rows) and ONE_QUESTION not in SEEN:
            desk.key("Return")  # one too many, of the question before
            desk.see("^Press the key of an answer")
            assert desk.question() == panel, "a further Enter said yes"
            SEEN.add(ONE_QUESTION)
        person.keys(desk, panel)
        asked += 1

        def has_moved(old=panel):
            now = desk.question()
            return "That was the last question" in desk.texts() or (now is not None and now != old)

        desk.wait(has_moved, f"the question after {asking!r}")


def sign_in(desk):
    desk.focus_on("Passphrase")
    check_names(desk, "sign in")
    desk.type(PASSPHRASE)
    desk.key("Return")
    desk.see("Maren Oakshott")


def swap_one(desk):
    """On the plan page: the first exercise that can be swapped, for the first that it can be swapped for."""
    desk.key("alt+5")
    desk.see("Starter plan")
    check_names(desk, "plan")
    while "Swap for" not in desk.texts():
        before = desk.focused().get_name()
        desk.key("Down")
        desk.wait(lambda: desk.focused() is not None and desk.focused().get_name() != before, f"the exercise after {before}")
    before = desk.focused().get_name()
    desk.key("1")
    desk.see("Asked for")
    return desk.wait(lambda: (lambda at: at is not None and at.get_name() != before and at.get_name())(desk.focused()), "the exercise taken instead")


def take_beyond(desk):
    """On the plan page: something that the limits leave out is taken all the same, with a reason."""
    desk.key("alt+5")
    desk.see("Starter plan")
    desk.key("t")
    # What a clearance opens is refused; the first that a reason is enough for is taken.
    while True:
        taken = re.sub("^Take | all the same…$", "", desk.focus_on("^Take ").get_name())
        desk.key("Return")
        at = desk.focus_on("^Your reason$|^OK$")
        if at.get_name() == "Your reason":
            break
        desk.see("wants a clearance")
        desk.key("Return")
        desk.focus_on("^Take " + re.escape(taken))
        desk.key("Tab")
        desk.wait(lambda: desk.focused() is not None and taken not in desk.focused().get_name(), f"what else is left out than {taken}")
    check_names(desk, "beyond the limits")
    desk.type("her daughter helps")
    desk.key("Return")
    desk.see("Reason: her daughter helps")
    return taken


def override(desk):
    """On the decision page: a finding is set aside. Without a choice and a reason nothing is signed."""
    desk.focus_on("^Sign")
    desk.key("alt+o")
    # The toolkit does not tell of the focus in a choice.
    desk.wait(lambda: desk.find("combo box", "^Finding"), "the dialog")
    check_names(desk, "override")
    desk.key("ctrl+Return")
    desk.see("Choose the finding")
    desk.key("Down", "Tab")
    desk.focus_on("What holds instead")
    desk.type("as her physician wrote")
    desk.key("Return")
    desk.focus_on("Why")
    desk.type("seen and examined")
    desk.key("Return")
    desk.focus_on("Passphrase")
    desk.type(PASSPHRASE)
    desk.key("Return")
    desk.see("Set by a clinician")
    desk.see(r"as her physician\s+wrote")


def hand_over(desk):
    """The client has the screen; only the passphrase gives the program back."""
    desk.wait(desk.question, "the interview")
    desk.key("F9")
    desk.see("^[0-9]+ answered")
    desk.wait(lambda: (lambda at: at is not None and at.get_action_iface().do_action(0))(desk.find("push button", "^Staff")), "the way out")
    desk.focus_on("Passphrase")
    desk.type("some other words")
    desk.key("Return")
    desk.see("That is not the passphrase")
    desk.focus_on("Passphrase")
    assert desk.find("menu") is None, "a wrong passphrase gave the program back"
    desk.type(PASSPHRASE)
    desk.key("Return")
    desk.wait(lambda: desk.find("menu") is not None and desk.question() is not None, "the whole program")


def move_by_tab(desk, name):
    """On until the focus stands on what has this name."""
    for _ in range(30):
        at = desk.focused()
        if at is not None and re.search(name, at.get_name() or ""):
            return
        desk.key("Tab")
        desk.wait(lambda: desk.focused() is not None and desk.focused() != at, f"what comes after {at and at.get_name()}")
    raise AssertionError(f"{name} is not reached by the tabulator key")


def save_papers(desk):
    desk.key("alt+6")
    desk.focus_on("^Summary")
    check_names(desk, "papers")
    move_by_tab(desk, "^Figure in the drawings$")
    desk.key("Down")
    said_in_foot(desk, r"^Handout: [0-9]+ pages$")
    figure = desk.find("combo box", "^Figure in the drawings$").get_selection_iface().get_selected_child(0)
    assert figure.get_name() == "slighter", figure.get_name()
    move_by_tab(desk, "^Folder$")
    folder = os.path.join(WORK, "papers of today")
    desk.key("ctrl+a")
    desk.type(folder)
    desk.key("Return")
    said_in_foot(desk, r"^Saved: [0-9]+ papers in ")
    saved = sorted(os.listdir(folder))
    assert "summary.pdf" in saved and "handout.pdf" in saved, saved
    for name in saved:
        with open(os.path.join(folder, name), "rb") as file:
            assert file.read(5) == b"%PDF-", name


def said_in_foot(desk, pattern):
    """What has just been done stands in the line of the window that is there for it."""
    def line():
        foot = desk.find("status bar")
        return foot is not None and any(re.search(pattern, node.get_name() or "") for node in desk.all(foot))

    desk.wait(line, f'"{pattern}" in the foot of the window')


def lock_by_itself():
    chosen = os.path.join(os.environ["XDG_CONFIG_HOME"], "stile", "desk.conf")
    with open(chosen) as file:
        lines = [line for line in file if not line.startswith("lockMinutes=")]
    with open(chosen, "w") as file:
        file.writelines([*lines, f"lockMinutes={LOCK_SECONDS / 60}\n"])
    desk = Desk(PROGRAM, WORK, "--date", "2026-11-25")
    desk.focus_on("Passphrase")
    desk.type(PASSPHRASE)
    desk.key("Return")
    begun = time.monotonic()
    said_in_foot(desk, "^Locked$")
    desk.focus_on("Passphrase")
    assert time.monotonic() - begun >= LOCK_SECONDS, "it locked before its time"
    assert not any("Maren" in text for text in desk.texts()), "a client's name is left on the locked screen"
    return desk


def main():
    person = Person(SOURCE, "base/healthy-woman.json")
    desk = Desk(PROGRAM, WORK, "--date", "2026-11-25")
    set_up(desk)
    new_client(desk)
    first = interview(desk, person, stop_after=9)
    hand_over(desk)
    before_kill = answered_so_far(desk)
    desk.kill()

    desk = resume()
    desk.key("alt+3")
    desk.wait(lambda: desk.question(), "the question after the kill")
    assert answered_so_far(desk) >= before_kill, "answers were lost"
    second = interview(desk, person)
    assert SEEN == {*HIGHER_THAN_THE_WINDOW, ONE_QUESTION}, f"only {SEEN} was met"
    print(f"{first} + {second} screens")
    desk.key("Return")
    desk.see("Findings")
    check_names(desk, "decision")
    beyond = take_beyond(desk)
    taken = swap_one(desk)
    desk.kill()

    desk = resume()
    desk.key("alt+5")
    desk.wait(lambda: taken in desk.texts() and beyond in desk.texts(), f"in the plan after the kill: {taken}, {beyond}")
    desk.key("alt+4")
    desk.see("Findings")
    override(desk)
    save_papers(desk)
    desk.key("alt+4")
    desk.focus_on("^Sign")
    desk.key("alt+s")
    desk.focus_on("Passphrase")
    desk.type(PASSPHRASE)
    desk.key("Return")
    desk.see("Signed off")
    desk.key("alt+5")
    desk.wait(lambda: taken in desk.texts(), f"in the filed plan: {taken}")
    desk.see("Filed with the screening")
    desk.close()
    desk = lock_by_itself()
    desk.close()
    assert not unnamed, "without a name: " + "; ".join(unnamed)
    strange = desk.strange_messages()
    assert not strange, "messages of the toolkit: " + "; ".join(strange[:10])


def resume():
    desk = Desk(PROGRAM, WORK, "--date", "2026-11-25")
    sign_in(desk)
    check_names(desk, "today")
    desk.key("Return")
    desk.see("Born")
    check_names(desk, "client")
    return desk


main()

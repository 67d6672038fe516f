"""Measurements, history, rules, client mode in another language, a letter in other words and printing, in the demo
clinic, by keyboard. On every page each control has a name."""
import glob
import json
import os
import re
import subprocess
import sys

from desk_driver import Desk

PROGRAM, WORK = sys.argv[1:3]
SOURCE = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
SPOKEN = os.path.join(WORK, "spoken")
ASKED_IN_SPANISH = 8
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


def open_demo(desk):
    desk.focus_on("Set up a new clinic")
    desk.key("Tab", "Tab", "Return")
    desk.focus_on("Find a client")


def open_client(desk):
    desk.type("Penhallow")
    desk.see("Idris Penhallow")
    desk.key("Return")
    desk.see("Born")
    check_names(desk, "client")


def on_to(desk, name):
    """From field to field by Enter."""
    while desk.focused().get_name() != name:
        before = desk.focused().get_name()
        desk.key("Return")
        desk.wait(lambda: desk.focused() is not None and desk.focused().get_name() != before, f"the field after {before}")


def change_contacts(desk):
    """Another physician; a page with a change on it is not left by accident, and nobody keeps the practice of another."""
    desk.key("alt+c")
    desk.focus_on("Given name")
    check_names(desk, "change of contacts")
    on_to(desk, "Physician")
    desk.type("Dr Ned Ashlar")
    on_to(desk, "Physician's practice")
    desk.type("Millrace Surgery")
    desk.key("ctrl+Return")
    desk.see("^Dr Ned Ashlar")
    desk.key("alt+c")
    desk.focus_on("Given name")
    on_to(desk, "Physician")
    desk.key("ctrl+a")
    desk.type("Dr Orla Fenwick")
    desk.key("ctrl+Return")
    desk.see("^This is how Dr Ned Ashlar is reached")
    desk.key("alt+1")
    desk.see("^Save the change first")
    desk.key("ctrl+Return")
    desk.see("^Dr Orla Fenwick")
    desk.key("alt+c")
    desk.focus_on("Given name")
    desk.key("Escape")
    desk.see("^Dr Orla Fenwick")


def fill(desk, fields):
    """Types into the fields of these names."""
    for name, words in fields.items():
        desk.wait(lambda name=name: (lambda at: at is not None and at.get_component_iface().grab_focus())(desk.find("text", f"^{name}$") or desk.find("password text", f"^{name}$")), f"the field {name}")
        desk.focus_on(name)
        desk.key("ctrl+a")
        desk.type(words)


def look_after_the_clinic(desk):
    """What it says on papers, somebody new who may sign in, a backup."""
    desk.key("ctrl+comma")
    desk.see("^As it stands on papers$")
    check_names(desk, "clinic")
    fill(desk, {"Opening hours": "weekdays 8 to 18"})
    desk.key("alt+1")
    desk.see("^Save what the clinic says on papers first")
    desk.key("ctrl+Return")
    desk.wait(lambda: any(text.startswith("Saved") for text in desk.texts()), "that it is saved")
    press(desk, "^Let them sign in")
    desk.see("^This is needed")
    fill(desk, {"Name": "Piers Hollin", "Profession": "physiotherapist", "Sign-in name": "piers"})
    desk.key("Tab")
    desk.wait(lambda: desk.focused() is not None and (desk.focused().get_name() or "").startswith("May do what"), "the choice of rights")
    desk.key("Down", "Down")
    fill(desk, {"Their passphrase": "green boat nine hills", "Their passphrase once more": "green boat nine hills"})
    press(desk, "^Let them sign in")
    desk.see("^Piers Hollin, physiotherapist")
    fill(desk, {"Folder": os.path.join(WORK, "copies")})
    press(desk, "^Make a backup now")
    desk.wait(lambda: glob.glob(os.path.join(WORK, "copies", "*.stile")), "the backup")
    desk.key("alt+1")
    desk.focus_on("Find a client")


def with_a_full_disk(desk):
    """What must be done now stands there though nothing can be written any more; nothing is lost by it."""
    desk.key("ctrl+n")
    desk.focus_on("Given name")
    for words in ("Petra", "Lindqvist", "21 July 1971", "0451"):
        desk.type(words)
        desk.key("Return")
    desk.key("ctrl+Return")
    asked = desk.wait(desk.question, "the first question")
    desk.fill_disk()
    desk.key("1", "End", "Return")
    desk.see(r"^Stop\. Call ")
    why = re.compile("No action record could be filed: .*the disk (is full|gives an error)")
    desk.wait(lambda: any(why.match(" ".join(text.split())) for text in desk.texts()), "why nothing was filed")
    assert desk.find("alert") is None and desk.find("dialog") is None, "a dialog stands before what must be done now"
    desk.see("^Not saved: .*the disk (is full|gives an error)")
    desk.fill_disk(False)
    press(desk, "^Go on with the questions")
    desk.wait(lambda: desk.question() not in (None, asked), "the next question")
    desk.key("End", "n")
    desk.see("^An action record is open")  # the next answer has tried it again
    desk.see("^Saved")
    press(desk, "^Go on with the questions")
    desk.wait(lambda: any(re.match("1[0-9] answered", text) for text in desk.texts()), "what was answered")


def lose_no_mark(desk):
    """N does not say no to what is marked, and a step back brings the marks back."""
    listed = desk.wait(lambda: (lambda at: at if at is not None and at.get_name() == "Does any of these apply?" else None)(desk.question()), "a list")
    desk.key("2", "n")
    desk.see("^Something is marked")
    assert desk.question() == listed, "a mark was lost"
    desk.key("F5")  # all answers, and back
    desk.see("^All answers so far")
    check_names(desk, "all answers")
    desk.key("F5")
    desk.wait(lambda: desk.question() == listed and desk.find("push button", ", yes$"), "the list with its mark")
    desk.key("End", "Return")
    desk.wait(lambda: desk.question() not in (None, listed), "the next question")
    desk.key("alt+Left")
    desk.wait(lambda: desk.find("push button", ", yes$"), "what was marked before")
    # An answer further back than those that are shown.
    desk.key("F5")
    desk.see("^All answers so far")
    oldest = [text for text in desk.texts() if text.endswith(". Change it")][-1]
    press(desk, "^" + re.escape(oldest))
    desk.wait(lambda: desk.question() not in (None, listed), "the question of the oldest answer")
    desk.key("alt+Left")


def measure(desk):
    desk.key("alt+7")
    desk.see("Measurements and tests")
    check_names(desk, "measurements")
    desk.key("space")
    desk.see(r"^4:\d\d$")
    desk.key("Return")
    desk.wait(lambda: desk.focused() is not None and desk.focused().get_name() == "What is the first number of the blood pressure?", "the field")
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
    desk.wait(lambda: (lambda now: now is not None and now.get_name() != asked)(desk.question()), "the next question")
    assert desk.find("menu") is None, "no menu for a client"
    in_spanish(desk)


def spanish_words():
    """What the content's draft translation says, of every question."""
    says = set()
    for name in glob.glob(os.path.join(SOURCE, "rules/phrases/es/forms/*.json")):
        with open(name) as file:
            says.update(phrase["say"] for phrase in json.load(file)["texts"].values())
    return says


def in_spanish(desk):
    says = spanish_words()
    press(desk, "^Español$")
    desk.see("^Borrador")
    for _ in range(ASKED_IN_SPANISH):
        asked = desk.wait(desk.question, "the question").get_name()
        assert asked in says, f"not in Spanish: {asked}"
        check_names(desk, "client mode in Spanish")
        press(desk, "^Léamelo$")
        desk.wait(lambda: os.path.exists(SPOKEN) and asked in open(SPOKEN).read(), "what is read aloud")
        assert "-l es" in open(SPOKEN).read(), "read aloud in another language"
        press(desk, "^Dejarlo por ahora$")
        desk.wait(lambda: (lambda now: now is not None and now.get_name() != asked)(desk.question()), "the next question in Spanish")


def have_a_voice():
    """Stands in for the speech service of the system, and writes down what it is to say."""
    folder = os.path.join(WORK, "bin")
    os.makedirs(folder)
    name = os.path.join(folder, "spd-say")
    with open(name, "w") as file:
        file.write(f'#!/bin/sh\nprintf "%s\\n" "$*" >> "{SPOKEN}"\n')
    os.chmod(name, 0o755)
    os.environ["PATH"] = folder + ":" + os.environ["PATH"]


def open_waiting(desk):
    desk.key("alt+1")
    desk.focus_on("Find a client")
    desk.type("Farrow")
    desk.see("Gwenda Farrow")
    desk.key("Return")
    desk.see("Born")


def change_a_letter(desk):
    """Another question in the letter: seen at once, on the saved paper, and named in its foot."""
    desk.key("alt+6")
    desk.focus_on("^Summary")
    while not desk.focused().get_name().startswith("Clearance letter"):
        before = desk.focused().get_name()
        desk.key("Down")
        desk.wait(lambda: desk.focused() is not None and desk.focused().get_name() != before, f"what comes after {before}")
    desk.key("alt+w")
    at = desk.wait(lambda: (lambda at: at is not None and at.get_role_name() == "text" and at)(desk.focused()), "the first passage")
    check_names(desk, "words of the letter")
    desk.key("Tab")
    at = desk.wait(lambda: (lambda now: now is not None and now != at and now.get_role_name() == "text" and now)(desk.focused()), "the question of the letter")
    desk.key("ctrl+a")
    desk.key("Delete")
    desk.see("A letter needs this")
    desk.type("May Gwenda walk with us on Tuesdays?")
    desk.wait(lambda: any("Tuesdays" in (node.get_description() or "") for node in desk.all()), "the letter in these words")
    desk.key("ctrl+Return")
    desk.focus_on("^Clearance letter, in your words")
    desk.key("ctrl+s")
    desk.see("^Saved: ")
    letter = glob.glob(os.path.join(WORK, "**", "clearance-letter.pdf"), recursive=True)
    assert len(letter) == 1, letter
    words = subprocess.run(["pdftotext", letter[0], "-"], check=True, capture_output=True, text=True).stdout
    assert "May Gwenda walk with us on Tuesdays?" in " ".join(words.split()), words


def print_papers(desk):
    """To a file, which is the printer that is always there."""
    desk.key("ctrl+p")
    printer = desk.wait(lambda: desk.find("table cell", "^Print to File$"), "the system's print dialog")
    printer.get_component_iface().grab_focus()
    desk.key("space")
    desk.see("^Printed: 3 papers, [0-9]+ pages$")
    printed = subprocess.run(["pdfinfo", "output.pdf"], check=True, capture_output=True, text=True).stdout
    assert "A4" in printed, printed
    # At its own size and in its own place.
    saved = glob.glob(os.path.join(WORK, "**", "summary.pdf"), recursive=True)[0]
    places = first_word("output.pdf"), first_word(saved)
    assert all(abs(a - b) < 2 for a, b in zip(*places)), places


def first_word(name):
    """Where the first word of the first page stands, and how tall it is, in points."""
    words = subprocess.run(["pdftotext", "-bbox", "-l", "1", name, "-"], check=True, capture_output=True, text=True).stdout
    x, y, _, end = (float(number) for number in re.search(r'<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">Screening<', words).groups())
    return x, y, end - y


have_a_voice()
os.chdir(WORK)  # where the system prints a file to
desk = Desk(PROGRAM, WORK, "--date", "2026-11-25")
open_demo(desk)
look_after_the_clinic(desk)
open_client(desk)
change_contacts(desk)
measure(desk)
follow_up(desk)
read_rules(desk)
open_waiting(desk)
change_a_letter(desk)
print_papers(desk)
with_a_full_disk(desk)
lose_no_mark(desk)
hand_over(desk)
desk.kill()
assert not unnamed, "without a name: " + "; ".join(unnamed)
strange = desk.strange_messages()
assert not strange, "messages of the toolkit: " + "; ".join(strange[:10])

"""By mouse alone: first run, a new client, the interview, decision, one exercise swapped, signing, papers
saved as PDF; then the program is started again and the filed client opened."""
import os
import sys

from answers import Person
from desk_driver import Desk
from mouse import Mouse

PROGRAM, WORK = sys.argv[1:3]
SOURCE = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
PASSPHRASE = "blue kettle seven gates"
PAPERS = WORK  # the home of this walk, which the choice of a folder begins with


def set_up(mouse):
    mouse.press("Set up a new clinic")
    for field, words in (("Name of the clinic", "Tarnside Movement Clinic"), ("Emergency number", "112"), ("Your name", "Ines Calloway"),
                         ("Profession", "physiotherapist"), ("Sign-in name", "ines")):
        mouse.write("^" + field, words)
    for field in ("Passphrase", "The passphrase once more"):
        mouse.write("^" + field, PASSPHRASE, "password text")
    mouse.press("Make the clinic file")
    mouse.press("It is written on paper", "check box")
    mouse.press("Go to work")
    mouse.desk.see("Nobody is in this clinic file yet")


def new_client(mouse):
    mouse.press("^New client")
    for field, words in (("Given name", "Maren"), ("Family name", "Oakshott"), ("Date of birth", "14 March 1963")):
        mouse.write("^" + field, words)
    mouse.press("Take in and begin")


def interview(mouse, person):
    desk, asked = mouse.desk, 0
    while True:
        panel = desk.wait(lambda: desk.question() or "That was the last question" in desk.texts(), "a question")
        if panel is True:
            return asked
        mouse.answer(person, panel)
        asked += 1
        desk.wait(lambda old=panel: "That was the last question" in desk.texts() or desk.question() not in (None, old), "the next question")


def swap_one(mouse):
    desk = mouse.desk
    mouse.press("^Plan$")
    desk.see("Starter plan")
    shown = next(text for text in desk.texts() if text.startswith("At hand") or text == "At hand")
    assert shown, "what is at hand is not shown"
    other = desk.wait(lambda: next((node for node in swaps(desk)), None), "what the exercise can be swapped for")
    taken = other.get_name().split(",")[0]
    mouse.click(other)
    desk.see("Asked for")
    return taken


def swaps(desk):
    """Buttons behind the words "Swap for", before the next heading."""
    behind = False
    for node in desk.all():
        behind = behind or node.get_name() == "Swap for"
        if behind and node.get_role_name() == "push button":
            yield node


def sign(mouse):
    mouse.press("^Decision$")
    mouse.press("^Sign…$")
    mouse.desk.focus_on("Passphrase")
    mouse.desk.type(PASSPHRASE)
    mouse.press("^Sign$")
    mouse.desk.see("^Signed off")


def save_papers(mouse):
    desk = mouse.desk
    mouse.press("^Papers$")
    mouse.press("^Browse")
    desk.wait(lambda: desk.find("file chooser"), "the choice of a folder")
    mouse.press("^Open$")
    desk.wait(lambda: desk.find("file chooser") is None, "the end of the choice")
    mouse.press("^Save as PDF")
    desk.see("^Saved: ")
    saved = sorted(os.listdir(PAPERS))
    assert "handout.pdf" in saved and "summary.pdf" in saved, saved
    for name in (name for name in saved if name.endswith(".pdf")):
        with open(os.path.join(PAPERS, name), "rb") as file:
            assert file.read(5) == b"%PDF-", name


def reopen(taken):
    desk = Desk(PROGRAM, WORK, "--date", "2026-11-26")
    mouse = Mouse(desk)
    mouse.write("^Passphrase", PASSPHRASE, "password text")
    mouse.press("^Open$")
    row = mouse.button("^Maren Oakshott")
    mouse.click(row)
    desk.see("^Born")
    mouse.press("^Decision$")
    desk.see("^Signed off")
    mouse.press("^Plan$")
    desk.see("Filed with the screening")
    assert any(text.startswith(taken) for text in desk.texts()), f"not in the filed plan: {taken}"
    return desk


def main():
    desk = Desk(PROGRAM, WORK, "--date", "2026-11-25")
    mouse = Mouse(desk)
    set_up(mouse)
    new_client(mouse)
    print(interview(mouse, Person(SOURCE, "base/healthy-woman.json")), "screens")
    mouse.press("^To the decision")
    desk.see("^Findings$")
    taken = swap_one(mouse)
    sign(mouse)
    save_papers(mouse)
    desk.kill()
    desk = reopen(taken)
    desk.close()
    strange = desk.strange_messages()
    assert not strange, "messages of the toolkit: " + "; ".join(strange[:10])


main()

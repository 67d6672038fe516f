"""Takes a picture of every page, to look at and for the README: run by run.sh, with a screen of the size
wanted (SCREEN) and the command line's program in STILE. LOOK is light, dark or contrast, TEXT the text size
in per cent, PICTURES the folder to put them in; GDK_SCALE works as usual."""
import os
import subprocess
import sys
import time

from answers import Person
from clinic import PASSPHRASE, Clinic
from desk_driver import Desk

PROGRAM, WORK = sys.argv[1:3]
SOURCE = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
OUT = os.environ.get("PICTURES", WORK)
SETTLED = 0.5  # seconds until everything is painted
CLIENTS = {"crowded": "Bartholomew", "healthy": "Idris", "emergency": "Tove", "waiting": "Pilar"}
# Page -> its number on the fence, and what stands on it once it is whole.
PAGES = {"client": (2, "^Born$"), "decision": (4, "^Findings$"), "plan": (5, "^(Starter plan|Held plan|No plan yet)$"), "papers": (6, "^Papers, this page$")}

MORE = {"tests": (7, "^Measurements and\\stests$"), "history": (8, "A screening as it was"), "rules": (9, "^Find rules")}


def choose():
    folder = os.path.join(os.environ["XDG_CONFIG_HOME"], "stile")
    os.makedirs(folder)
    with open(os.path.join(folder, "desk.conf"), "w") as file:
        file.write(f"look={os.environ.get('LOOK', 'light')}\ntextPercent={os.environ.get('TEXT', '100')}\n")


def picture(name):
    time.sleep(SETTLED)
    subprocess.run(["import", "-window", "root", os.path.join(OUT, name + ".png")], check=True)


def pages_of(desk, name, part):
    desk.key("alt+1")
    desk.focus_on("Find a client")
    desk.type(part)
    desk.key("Return")
    desk.see("Born")
    for page, (number, mark) in {**PAGES, **(MORE if name == "crowded" else {})}.items():
        desk.key(f"alt+{number}")
        desk.see(mark)
        picture(f"{name}-{page}")
    if name == "crowded":
        desk.key("alt+2")
        desk.see("Born")
        desk.key("alt+c")
        desk.focus_on("Given name")
        picture("client-change")
    desk.key("alt+4")
    desk.see("^Findings$")
    if name == "emergency":
        return
    desk.key("alt+o")
    desk.wait(lambda: desk.find("combo box", "^Finding"), "the dialog")
    picture(f"{name}-override")
    desk.key("Escape")
    desk.wait(lambda: desk.find("combo box", "^Finding") is None, "the end of the dialog")


def main():
    os.makedirs(OUT, exist_ok=True)
    choose()
    desk = Desk(PROGRAM, WORK, "--date", "2026-11-25")
    desk.focus_on("Set up a new clinic")
    picture("start")
    desk.key("Return")
    desk.focus_on("Name of the clinic")
    picture("set-up")
    desk.kill()
    clinic = Clinic(os.environ["STILE"], SOURCE, WORK).fill()
    desk = Desk(PROGRAM, WORK, "--date", "2026-11-25", "--file", clinic.file)
    desk.focus_on("Sign-in name")
    picture("sign-in")
    desk.type("ines")
    desk.key("Return")
    desk.focus_on("Passphrase")
    desk.type(PASSPHRASE)
    desk.key("Return")
    desk.see("Bartholomew")
    picture("today")
    desk.key("ctrl+comma")
    desk.see("^As it stands on papers$")
    picture("clinic")
    desk.find("text", "^Folder$").get_component_iface().grab_focus()
    desk.focus_on("Folder")
    picture("clinic-end")
    for name, part in CLIENTS.items():
        pages_of(desk, name, part)
    interview(desk)
    client_mode(desk)


def begin(desk, *words):
    desk.key("ctrl+n")
    desk.focus_on("Given name")
    picture("new-client")
    for text in words:
        desk.type(text)
        desk.key("Return")
    desk.key("ctrl+Return")


def client_mode(desk):
    begin(desk, "Corin", "Thistlewood", "2 May 1970", "0418")
    desk.wait(desk.question, "a question")
    desk.key("F9")
    desk.wait(lambda: desk.find("menu") is None and desk.question(), "the page for the client")
    picture("client-mode")
    desk.key("2")
    time.sleep(SETTLED)
    picture("client-mode-2")


def is_over(desk):
    """Long titles stand in lines of their own."""
    return "That was the last question" in [" ".join(text.split()) for text in desk.texts()]


def interview(desk):
    begin(desk, "Maren", "Oakshott", "14 March 1963", "0417")
    person = Person(SOURCE, "base/healthy-woman.json")
    asked = 0
    while True:
        panel = desk.wait(lambda: desk.question() or is_over(desk), "a question")
        asked += 1
        if panel is True:
            break
        if asked in (1, 2, 3, 7, 9, 14, 18):
            picture(f"interview-{asked:02}")
        if asked == 9:
            desk.key("F8")
            time.sleep(0.3)
            picture("interview-consequences")
            desk.key("F8")
            panel = desk.wait(lambda: desk.question(), "the question again")
        person.keys(desk, panel)
        desk.wait(lambda old=panel: is_over(desk) or (desk.question() not in (None, old)), "the next question")
    picture("interview-end")
    desk.key("F5")
    desk.see("^All answers so far")
    picture("interview-answers")
    desk.key("F5")
    desk.wait(lambda: is_over(desk), "the end again")
    desk.key("Return")
    desk.see("Findings")
    time.sleep(3)
    picture("open-decision")
    desk.key("alt+5")
    picture("open-plan")


main()

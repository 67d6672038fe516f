"""How long three invented clients take at the desk, by keys: a healthy adult in the clinic, the same by telephone,
and somebody with eight conditions and twelve medicines. Prints questions, keystrokes and minutes; nothing fails.

The minutes are an estimate, not a measurement: the keystroke-level model of S. K. Card, T. P. Moran and A. Newell,
"The keystroke-level model for user performance time with interactive systems", Communications of the ACM 23(7),
1980, 396-410 (numbers from memory): 0.28 s a key for somebody who types 40 words a minute, and 1.35 s to make up
one's mind before each screen and each field. The keyboard is not left, so no hand moves to a mouse. What is said is
added: reading aloud at 183 words a minute (M. Brysbaert, Journal of Memory and Language 109, 2019, from memory), and
for the client's answer 1 s a line of a list, which is a "no" between two gaps of about 0.2 s (S. C. Levinson and
F. Torreira, "Timing in turn-taking and its implications for processing models of language", Frontiers in Psychology
6:731, 2015, abstract read), 2 s a question, 4 s for a number or words (common practice, no source). Choices of several
that are denied are read out in full. Lists that the clinician answers cost a thought a line and no talk. What it takes
to measure, to wait for the rest before a pressure, and to talk of anything else is not in it.

    sh tests/desktop/run.sh build/test/bin/stile-desk /tmp/desk-time time_at_desk.py
"""
import json
import os
import sys

from answers import items_of
from desk_driver import Desk

PROGRAM, WORK = sys.argv[1:3]
SOURCE = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
PASSPHRASE = "blue kettle seven gates"
KEY, MIND, SPOKEN, LINE_ANSWER, ANSWER, LONG_ANSWER = 0.28, 1.35, 60 / 183, 1.0, 2.0, 4.0
NONE, BY_CLINICIAN = "None of these", "For the clinician"
CLINICIANS_OWN = {"consentDoubt", "selfHarmCue", "cannotDoMoves"}
LAST, GO_ON = "That was the last question", "^Go on with the questions"
CONDITIONS = {"knownHypertension": True, "kidneyDisease": True, "lowBoneDensity": True, "kneeOsteoarthritis": True, "diabetesType": "type2",
              "heartConditions": ["atrialFibrillation", "stroke"], "lungConditions": ["copd"]}
MEDICINES = 12


class CountingDesk(Desk):
    keys = minds = 0

    def key(self, *keys):
        CountingDesk.keys += sum(len(key.split("+")) for key in keys)
        super().key(*keys)

    def type(self, text):
        CountingDesk.keys += len(text)
        super().type(text)


class Client:
    """Answers by the words of the question; groups are answered one repetition after the other."""

    def __init__(self, facts):
        self.items, self.facts, self.at = items_of(os.path.join(SOURCE, "questionnaires")), facts, {}
        self.group_of = {member: name for name, value in facts.items() if isinstance(value, list) and value and isinstance(value[0], dict)
                         for one in value for member in one}
        self.group = None

    def fact(self, question):
        item = self.items.get(question)
        name = item and item["linkId"]
        if name in self.group_of:
            self.group = self.group_of[name]
            return self.facts[self.group][self.at.setdefault(self.group, 0)].get(name)
        return self.facts.get(name)

    def another(self):
        self.at[self.group] = self.at.get(self.group, 0) + 1
        return self.at[self.group] < len(self.facts.get(self.group, []))

    def answer(self, desk, panel):
        """Seconds of talk."""
        question = panel.get_name()
        rows = [node.get_name() for node in desk.all(panel) if node.get_role_name() == "push button"]
        if question.endswith(": is there another one?"):
            desk.key("1" if self.another() else "2")
            return said(question) + ANSWER
        if question == "Does any of these apply?":
            words = [row if row in self.items else row.rsplit(", ", 1)[0] for row in rows]
            desk.key(*[str(i + 1) for i, word in enumerate(words) if self.fact(word) is True], "End", "Return")
            isTalk = self.items[words[0]]["linkId"] not in CLINICIANS_OWN
            return sum(said(row) + LINE_ANSWER if isTalk else MIND for row in rows)
        # Whoever has none of these must have heard all of them.
        options = [row.split(": ")[0] for row in rows[:-3]] if NONE + ": " + question in rows and not question.startswith(BY_CLINICIAN) else []
        return said(question) + sum(said(option) for option in options) + self.single(desk, panel, question)

    def single(self, desk, panel, question):
        item, fact = self.items.get(question), self.fact(question)
        has_field = any(node.get_role_name() in ("text", "entry") for node in desk.all(panel))
        if fact is None or item is None:
            desk.key("alt+u" if has_field else "u")
        elif has_field:
            desk.type(str(fact))
            desk.key("Return")
            return LONG_ANSWER
        elif isinstance(fact, bool):
            desk.key("y" if fact else "n")
        else:
            self.choose(desk, item, fact)
        return ANSWER

    def choose(self, desk, item, fact):
        codes = [option["valueCoding"]["code"] for option in item["answerOption"]]
        chosen = [codes.index(code) + 1 for code in (fact if isinstance(fact, list) else [fact]) if codes.index(code) < 9]
        if fact == ["none"]:
            return desk.key("End", "n")
        if not chosen:
            return desk.key("u")
        desk.key(*[str(number) for number in chosen], *(["End", "Return"] if isinstance(fact, list) else []))


def said(words):
    return len(words.split()) * SPOKEN


def interview(desk, client):
    """Until the decision is settled, or nothing is left to ask."""
    screens, talk = 0, 0.0
    while True:
        panel = desk.wait(lambda: desk.question() or LAST in desk.texts(), "a question")
        if panel is True or any(text.startswith("Settled") for text in desk.texts()):
            return screens, talk
        asked = panel.get_name()
        talk += client.answer(desk, panel)
        screens += 1
        desk.wait(lambda old=panel: LAST in desk.texts() or desk.find("push button", GO_ON) or desk.question() not in (None, old), f"the question after {asked!r}")
        if desk.find("push button", GO_ON):  # what must be done today stands in the question's place first
            desk.key("1")
            desk.wait(lambda: desk.find("push button", GO_ON) is None, "the next question")
            screens += 1


def person(name):
    with open(os.path.join(SOURCE, "tests", name)) as file:
        return json.load(file)


def walk(desk, title, facts, target, record, by_telephone=False):
    desk.key("ctrl+n")
    desk.focus_on("Given name")
    CountingDesk.keys = 0
    for text in ("Maren", title.split()[-1].capitalize(), "14 March 1963", record):
        desk.type(text)
        desk.key("Return")
    fields = 4
    desk.key("alt+t" if by_telephone else "ctrl+Return")
    screens, talk = interview(desk, Client(facts))
    keys = CountingDesk.keys
    desk.key("alt+4")
    desk.see("^Findings$")
    handling = (keys * KEY + (screens + fields) * MIND) / 60
    minutes = handling + talk / 60
    print(f"{title}: {screens} screens, {keys} keystrokes, {handling:.1f} minutes of keys and thought, {minutes:.1f} with asking and answering (target {target}: {'met' if minutes <= target else 'missed'})")


def papers(desk):
    CountingDesk.keys = 0
    desk.key("alt+s")
    desk.focus_on("Passphrase")
    desk.type(PASSPHRASE)
    desk.key("Return")
    desk.see("^Signed off")
    desk.key("alt+6")
    desk.focus_on("^Summary")
    desk.key("ctrl+s")
    desk.see("^Saved: ")
    minutes = (CountingDesk.keys * KEY + 4 * MIND) / 60
    print(f"Signing and papers: {CountingDesk.keys} keystrokes, {minutes:.1f} minutes (target 2: {'met' if minutes <= 2 else 'missed'})")


def set_up(desk):
    desk.focus_on("Set up a new clinic")
    desk.key("Return")
    desk.focus_on("Name of the clinic")
    for field in ["Tarnside Movement Clinic", "112", "01632 960 417", "", "Ines Calloway", "physiotherapist", "ines", PASSPHRASE, PASSPHRASE]:
        desk.type(field) if field else None
        desk.key("Tab")
    desk.key("Tab", "Return")
    desk.focus_on("It is written on paper")
    desk.key("space", "Tab")
    desk.focus_on("Go to work")
    desk.key("Return")
    desk.see("Nobody is in this clinic file yet")


def main():
    healthy, crowded = person("cases/base/healthy-woman.json")["facts"], person("documents/people/crowded.json")
    many = {**{name: value for name, value in crowded.items() if name not in healthy}, **healthy, **CONDITIONS,
            "takesAnyMedicine": True, "medicine": crowded["medicine"][:MEDICINES]}
    desk = CountingDesk(PROGRAM, WORK, "--date", "2026-11-25")
    set_up(desk)
    walk(desk, "Healthy adult in the clinic", healthy, 8, "0417")
    papers(desk)
    walk(desk, "Healthy adult by telephone", healthy, 10, "0418", by_telephone=True)
    walk(desk, "Eight conditions and twelve medicines", many, 25, "0419")
    desk.close()


main()

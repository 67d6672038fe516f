"""The desk by mouse alone: buttons are found where a screen reader finds them and clicked where they stand."""
import re
import subprocess
import time

from gi.repository import Atspi

WHEEL_DOWN, WHEEL_UP = "5", "4"


def box(node):
    """x, y, width, height on the screen."""
    at = Atspi.Component.get_extents(node, Atspi.CoordType.SCREEN)
    return at.x, at.y, at.width, at.height


def xdotool(*words):
    subprocess.run(["xdotool", *[str(word) for word in words]], check=True)


def pane_of(node):
    """The scrolled pane it stands in, or None."""
    node = node.get_parent()
    while node is not None and node.get_role_name() != "scroll pane":
        node = node.get_parent()
    return node


class Mouse:
    def __init__(self, desk):
        self.desk = desk

    def button(self, pattern, role="push button"):
        return self.desk.wait(lambda: self.desk.find(role, pattern), f'{role} "{pattern}"')

    def press(self, pattern, role="push button"):
        self.click(self.button(pattern, role))

    def click(self, node):
        self.into_view(node)
        x, y, width, height = box(node)
        xdotool("mousemove", x + min(width // 2, 60), y + height // 2, "click", 1)

    def into_view(self, node):
        """Turns the wheel until the whole of it shows in its pane."""
        pane = pane_of(node)
        if pane is None:
            return
        left, top, width, height = box(pane)
        for _ in range(60):
            _, y, _, tall = box(node)
            if top <= y and y + tall <= top + height:
                return
            xdotool("mousemove", left + width - 20, top + height // 2, "click", WHEEL_UP if y < top else WHEEL_DOWN)
            self.settle(node)
        raise AssertionError(f"{node.get_name()!r} does not come into view: {box(node)} in {box(pane)}")

    def settle(self, node):
        """Waits until it has stopped moving."""
        before = None
        while before != box(node):
            before = box(node)
            time.sleep(0.04)

    def write(self, pattern, text, role="text"):
        """Clicks into a field and types."""
        field = self.desk.wait(lambda: self.desk.find(role, pattern), f'field "{pattern}"')
        self.click(field)
        self.desk.focus_on(pattern)
        self.desk.type(text)

    def answer(self, person, panel):
        """Answers the question in the panel."""
        question = panel.get_name()
        rows = [node for node in self.desk.all(panel) if node.get_role_name() == "push button"]
        fields = [node for node in self.desk.all(panel) if node.get_role_name() in ("text", "entry")]

        def row(words):
            return next(node for node in rows if re.match(re.escape(words) + "(:|,|$)", node.get_name()))

        if question.endswith(": is there another one?"):
            return self.click(row("No"))
        if question == "Does any of these apply?":
            for node in rows:
                if person.fact(node.get_name()) is True:
                    self.click(node)
            self.into_view(rows[-1])  # nobody says no to what was out of sight
            return self.press("^(No to all of these|These, and no to the others)$")
        item, fact = person.items.get(question), person.fact(question)
        if fact is None or item is None:
            return self.click(row("Not sure"))
        if fields:
            self.click(fields[0])
            self.desk.type(str(fact))
            return self.press("^Take it$")
        if isinstance(fact, bool):
            return self.click(row("Yes" if fact else "No"))
        display = {option["valueCoding"]["code"]: option["valueCoding"]["display"] for option in item["answerOption"]}
        if isinstance(fact, list):
            self.into_view(rows[-1])
        for code in fact if isinstance(fact, list) else [fact]:
            self.click(row(display[code]))
        if isinstance(fact, list) and fact != ["none"]:
            self.into_view(rows[-1])
            self.press("^Take what is marked$")

"""Answers of an invented person, found by the words of the question on the screen."""
import json
import os


def items_of(folder):
    """Question text, or its short words -> item, over every form of the content."""
    found = {}

    def walk(items):
        for item in items:
            for words in [item.get("text")] + [one["valueString"] for one in item.get("extension", []) if one["url"].endswith("-shortText")]:
                if words:
                    found.setdefault(words, item)
            walk(item.get("item", []))

    for name in sorted(os.listdir(folder)):
        if name.endswith(".json"):
            with open(os.path.join(folder, name)) as file:
                walk(json.load(file).get("item", []))
    return found


class Person:
    def __init__(self, source, case):
        self.items = items_of(os.path.join(source, "questionnaires"))
        with open(os.path.join(source, "tests", "cases", case)) as file:
            self.facts = json.load(file)["facts"]

    def fact(self, question):
        item = self.items.get(question)
        return None if item is None else self.facts.get(item["linkId"])

    def keys(self, desk, panel):
        """Answers the question in the panel by keys."""
        question = panel.get_name()
        names = [node.get_name() for node in desk.all(panel) if node.get_role_name() == "push button"]
        if question.endswith(": is there another one?"):
            return desk.key("2")
        if question == "Does any of these apply?":
            marked = [i for i, name in enumerate(names) if self.fact(name if name in self.items else name.rsplit(", ", 1)[0]) is True]
            for i in marked:
                desk.key(str(i + 1))
            return desk.key("End", "Return")
        item, fact = self.items.get(question), self.fact(question)
        has_field = any(node.get_role_name() in ("text", "entry") for node in desk.all(panel))
        if fact is None or item is None:
            return desk.key("alt+u" if has_field else "u")
        if has_field:
            desk.type(str(fact))
            return desk.key("Return")
        if isinstance(fact, bool):
            return desk.key("y" if fact else "n")
        codes = [option["valueCoding"]["code"] for option in item["answerOption"]]
        chosen = fact if isinstance(fact, list) else [fact]
        if isinstance(fact, list) and chosen == ["none"] and any(option["valueCoding"]["code"] == "none" for option in item["answerOption"]):
            return desk.key("End", "n")
        # Options behind the ninth have no key of their own; this person does without them.
        reachable = [codes.index(code) + 1 for code in chosen if codes.index(code) < 9]
        if not reachable:
            return desk.key("u")
        for number in reachable:
            desk.key(str(number))
        if isinstance(fact, list):
            desk.key("End", "Return")

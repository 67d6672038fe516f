"""A clinic file with invented people on record, made by the command line."""
import json
import os
import subprocess

PASSPHRASE = "blue kettle seven gates"
SETTINGS = {"name": "Tarnside Movement Clinic", "emergencyNumber": "112", "telephone": "01632 960 417",
            "clinician": "Ines Calloway, physiotherapist"}
# Name, record number, and the answers that are filed: files of tests/documents/people.
PEOPLE = [
    (("Bartholomew Maximilian", "Featherstonehaugh-Achterberg"), "0431", "crowded"),
    (("Idris", "Penhallow"), "0432", "healthy"),
    (("Tove", "Brannigan"), "0433", "emergency"),
    (("Pilar", "Quennell"), "0434", "waiting"),
]


class Clinic:
    def __init__(self, program, source, folder, day="2026-11-25"):
        self.program, self.source, self.day = program, source, day
        self.file = os.path.join(folder, "clinic.stile")

    def run(self, *words, text=None, new=False):
        """One command, the passphrase given by a pipe as a person would type it."""
        read, write = os.pipe()
        os.write(write, (PASSPHRASE + "\n").encode())
        os.close(write)
        option = "--new-passphrase-fd" if new else "--passphrase-fd"
        done = subprocess.run([self.program, "--content", self.source, *words, option, str(read)], input=text, capture_output=True, text=True,
                              pass_fds=[read])
        os.close(read)
        assert done.returncode == 0, f"{words}: {done.stdout}{done.stderr}"
        return done.stdout

    def signed_in(self, group, command, *words, text=None):
        return self.run(group, command, "--file", self.file, "--as", "ines", *words, text=text)

    def fill(self):
        self.run("clinic", "create", "--file", self.file, "ines", "--name", "Ines Calloway", "--profession", "physiotherapist", "--role", "lead", new=True)
        settings = os.path.join(os.path.dirname(self.file), "settings.json")
        with open(settings, "w") as file:
            json.dump(SETTINGS, file)
        self.signed_in("clinic", "settings", settings)
        for (given, family), record, answers in PEOPLE:
            person = json.dumps({"given": given, "family": family, "born": "1955-08-30", "record": record})
            client = self.signed_in("client", "add", "-", text=person).split()[0]
            self.signed_in("client", "screen", client, os.path.join(self.source, "tests", "documents", "people", answers + ".json"), "--date", self.day)
        return self

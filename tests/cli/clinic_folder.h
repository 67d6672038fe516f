// A clinic file with its first clinician and one client, made through the real binary.
#pragma once

#include <string>

#include "run_program.h"

namespace stile::test {

/// A clinic file with one client. `stile()` gives the passphrase on descriptor 3.
struct ClinicFolder {
  ClinicFolder() {
    passphrase = folder.file("passphrase", "a quiet mill by the river\n");
    made = run("clinic create --file " + file + " ines --name 'Ines Calloway' --profession physiotherapist --new-passphrase-fd 3 3<" + passphrase);
    const std::string client = folder.file("client.json", R"({"given": "Maren", "family": "Oakshott", "born": "1958-03-14"})");
    id = stile("client add", client).out.substr(0, 32);
  }

  Ran stile(const std::string& command, const std::string& arguments = {}, const std::string& secret = {}) const {
    return run(command + " --file " + file + " --as ines --passphrase-fd 3 " + arguments + " 3<" + (secret.empty() ? passphrase : secret));
  }

  Folder folder;
  std::string file = folder / "t.stile", passphrase, id;
  Ran made;
};

}  // namespace stile::test
